import { describe, expect, it } from "vitest";
import type { TalkLevel } from "../../src/log/talkFacts.ts";
import { playCase } from "./playCase.ts";

const SET: Readonly<Record<TalkLevel, string>> = { full: "full talk", brief: "talk brief", alerts: "alerts only" };

/** Said at this level, last line of a case; what is said back. Empty: the soft sound alone. Invented. */
const ROWS: readonly (readonly [level: TalkLevel, said: readonly string[], reply: string])[] = [
  // A read-back, and what it means.
  ["full", ["one twenty over eighty"], "Pressure one twenty over eighty. MAP ninety three, on target."],
  ["brief", ["one twenty over eighty"], "Pressure one twenty over eighty."],
  ["alerts", ["one twenty over eighty"], ""],
  ["full", ["heart rate ninety"], "Heart rate ninety."],
  ["brief", ["heart rate ninety"], "Heart rate ninety."],
  ["alerts", ["heart rate ninety"], ""],
  // A mean that was said is in the consequence, else in the read-back; never lost between the two.
  ["full", ["map nine three"], "Measured MAP ninety three, on target."],
  ["brief", ["map nine three"], "MAP ninety three."],
  // Still under target a second time, when no alert says it.
  [
    "full",
    ["one ten over sixty", "one eleven over sixty"],
    "Pressure one eleven over sixty. MAP seventy seven, thirteen under ninety.",
  ],
  [
    "brief",
    ["one ten over sixty", "one eleven over sixty"],
    "Pressure one eleven over sixty. MAP seventy seven, thirteen under ninety.",
  ],
  ["alerts", ["one ten over sixty", "one eleven over sixty"], ""],
  // Several at once, a finding, a value that was asked back and affirmed.
  ["alerts", ["heart rate ninety, sats ninety six"], ""],
  ["alerts", ["left pupil four brisk"], ""],
  ["alerts", ["icp fifteen", "one five"], ""],
  ["alerts", ["heart rate ninety", "correction ninety two"], ""],
  // A number that cannot be right is said at every level.
  [
    "alerts",
    ["one sixty two over ninety two map one oh two"],
    "Pressure one sixty two over ninety two, MAP one oh two. Systolic and diastolic give one fifteen.",
  ],
  // Questions and refusals wait for the user.
  ["alerts", ["icp fifteen"], "ICP fifteen, one five?"],
  ["alerts", ["end tidal five"], "End tidal five: millimetres of mercury, or kilopascals?"],
  ["alerts", ["heart rate ninety, icp fifteen"], "Heart rate ninety. ICP fifteen, one five?"],
  ["alerts", ["done"], "No step is open. Say next."],
  ["alerts", ["correction ninety"], "Say which value."],
  // What doses and targets rest on.
  ["alerts", ["weight eighty two kilos"], "Weight eighty two kilograms."],
  ["alerts", ["sex male"], "Sex male."],
  ["alerts", ["age six two"], "Age sixty two years. Target: systolic one hundred."],
  // Drugs, both ways.
  [
    "alerts",
    ["rocuronium fifty milligrams given"],
    "Rocuronium, fifty, five zero, milligrams, given? No plan to compare with.",
  ],
  ["alerts", ["stop noradrenaline"], "Noradrenaline is not recorded as running."],
  // What was asked for.
  [
    "alerts",
    ["one twenty over eighty", "status"],
    "One twenty over eighty. MAP ninety three, on target. If ICP twenty, CPP seventy three.",
  ],
  [
    "brief",
    ["one twenty over eighty", "status"],
    "One twenty over eighty. MAP ninety three, on target. If ICP twenty, CPP seventy three.",
  ],
  ["alerts", ["one twenty over eighty", "how old"], "MAP ninety three, just now."],
  ["alerts", ["heart rate ninety", "read back"], "Heart rate ninety."],
  ["alerts", ["heart rate ninety", "why"], "Heart rate ninety, measured. Highest target one twenty, common practice."],
  ["alerts", ["next"], "Bleeding stopped, pelvis bound if suspected?"],
  ["alerts", ["heard"], "No alert to acknowledge."],
  ["alerts", ["louder"], "Voice louder."],
  // What is taken back is named.
  ["alerts", ["heart rate ninety", "disregard"], "Disregarded: heart rate ninety."],
  // Steps, phases and clocks have no number; the airway has.
  ["brief", ["suction ready"], "Suction: done."],
  ["alerts", ["suction ready"], ""],
  ["alerts", ["tube eight point zero"], "Tube: eight point zero."],
  ["full", ["phase settle"], "Settling phase."],
  ["alerts", ["phase settle"], ""],
  ["alerts", ["start apnoea"], ""],
  ["alerts", ["blade in"], "Blade in. Attempt one."],
];

describe("how much is said back, by the level of talk", () => {
  it.each(ROWS)("%s: %j → %s", async (level, said, reply) => {
    const { answers } = await playCase([SET[level], ...said]);
    expect(answers.at(-1)?.reply).toBe(reply);
  });
});

describe("what is said does not change what is recorded", () => {
  it.each(ROWS)("%s: %j", async (level, said) => {
    const [played, full] = [await playCase([SET[level], ...said]), await playCase(["full talk", ...said])];
    const factsOf = ({ answers }: typeof full) => answers.slice(1).map(({ outcome, facts }) => [outcome, facts.length]);
    expect(factsOf(played)).toEqual(factsOf(full));
  });
});
