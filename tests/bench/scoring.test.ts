import { describe, expect, it } from "vitest";
import type { HeardSound } from "../../src/listener/hearing.ts";
import { loadContext } from "../../src/cli/loadContext.ts";
import { NOTHING_TRUE, truthOf, type Outcome } from "./judge.ts";
import { PHRASES } from "./phrases.ts";
import { caseAfter, scoreHeard } from "./scoring.ts";
import { meantText } from "../phrases/meantText.ts";
import { understand } from "../../src/language/understand/understand.ts";
import { normalise } from "../../src/language/normalise/normalise.ts";

const START_MS = 1_800_000_000_000;
const NOW_MS = START_MS + 3_600_000;
const loaded = await loadContext({});
if (!loaded.ok) throw new Error(loaded.error);
const context = loaded.value;

/** Words as the listener gives them, and how well they fit: 0 is perfect, −10 a second reading far off. */
const heard = (...words: readonly (readonly [string, number])[]): HeardSound => ({
  candidates: words.map(([said, score]) => ({ words: said, score })),
  free: { score: 0, phones: 20 },
});
const clear = (words: string): HeardSound => heard([words, 0]);

const READINGS = ["next", "one twenty over seventy rate seventy five"];
const QUESTION = ["i c p fifteen"];

const ROWS: readonly (readonly [said: string, before: readonly string[], heard: readonly HeardSound[], Outcome])[] = [
  ["heart rate ninety", [], [clear("heart rate ninety")], "right"],
  ["heart rate ninety", [], [clear("pulse nine zero")], "right"],
  ["heart rate ninety", [], [clear("heart rate ninety one")], "wrong"],
  ["heart rate ninety", [], [clear("sats ninety")], "wrong"],
  ["heart rate ninety", [], [clear("status")], "wrong"],
  ["heart rate ninety", [], [], "silent"],
  ["blade in", [], [clear("blade in")], "right"],
  ["blade in", [], [clear("tube in")], "wrong"],
  ["start apnoea", [], [clear("apnoea started")], "right"],
  ["rocuronium ninety given", [], [clear("rocuronium ninety given")], "askedRight"],
  ["rocuronium ninety given", [], [clear("rocuronium ninety milligrams given")], "askedRight"],
  ["rocuronium ninety given", [], [clear("rocuronium nineteen given")], "askedWrong"],
  ["rocuronium ninety given", [], [clear("propofol ninety given")], "askedWrong"],
  ["heart rate ninety", [], [heard(["heart rate ninety", -40])], "silent"],
  ["heart rate ninety", [], [heard(["heart rate ninety", -11])], "askedRight"],
  ["heart rate ninety", [], [heard(["heart rate nine one", -11])], "askedWrong"],
  ["heart rate ninety", [], [heard(["heart rate ninety one", 0], ["heart rate ninety", -1])], "askedRight"],
  ["heart rate ninety", [], [heard(["heart rate ninety one", 0], ["heart rate ninety two", -1])], "askedWrong"],
  ["heart rate ninety", [], [clear("correction ninety")], "refused"],
  ["rate ninety and sats ninety four", [], [clear("rate ninety and sats ninety four")], "right"],
  ["rate ninety and sats ninety four", [], [clear("rate ninety")], "wrong"],
  ["rate ninety and sats ninety four", [], [clear("rate ninety and sats ninety five")], "wrong"],
  ["i c p fifteen", [], [clear("i c p fifteen")], "askedRight"],
  ["i c p fifteen", [], [clear("i c p fifty")], "askedRight"],
  ["i c p fifteen", [], [clear("i c p one five")], "right"],
  ["end tidal five", [], [clear("end tidal five")], "askedRight"],
  ["sats ninety four", [], [clear("sats ninety four"), clear("rate ninety")], "wrong"],
  ["sats ninety four", [], [heard(["rate", -40]), clear("sats ninety four")], "right"],
  ["age niner four", [], [clear("age niner four")], "askedRight"],
  ["niner four years old", [], [clear("niner four years old")], "right"],
  ["strike heart rate seventy five", READINGS, [clear("strike heart rate seventy five")], "askedRight"],
  ["strike heart rate seventy five", READINGS, [clear("strike heart rate seventy nine")], "refused"],
  ["strike heart rate twenty", READINGS, [heard(["strike heart rate twenty", -4])], "right"],
  ["status", READINGS, [clear("status")], "right"],
  ["status", READINGS, [clear("next")], "wrong"],
  ["disregard", READINGS, [clear("disregard")], "right"],
  ["done", READINGS, [clear("done")], "right"],
  ["done", READINGS, [clear("later")], "wrong"],
  ["correction heart rate ninety", READINGS, [clear("correction heart rate ninety")], "right"],
  ["correction heart rate ninety", READINGS, [clear("heart rate ninety")], "wrong"],
  ["yes", QUESTION, [clear("yes")], "right"],
  ["yes", QUESTION, [clear("no")], "wrong"],
  ["one five", QUESTION, [clear("five zero")], "wrong"],
];

describe("what was heard against what was said", () => {
  it.each(ROWS)("%s, %j", (said, before, sounds, outcome) => {
    const state = caseAfter(context, before, START_MS);
    const nowMs = before === QUESTION ? START_MS + 5_000 : NOW_MS;
    const truth = truthOf(context, state, said, nowMs);
    expect(truth.keys.size).toBeGreaterThan(0);
    const scored = scoreHeard(context, state, truth, sounds, nowMs);
    expect(scored.outcome).toBe(outcome);
  });
});

it("knows that nothing was meant: every act is wrong, every question a nuisance", () => {
  const state = caseAfter(context, [], START_MS);
  const outcomeOf = (sound: HeardSound) => scoreHeard(context, state, NOTHING_TRUE, [sound], NOW_MS).outcome;
  expect(outcomeOf(clear("rate ninety"))).toBe("wrong");
  expect(outcomeOf(clear("status"))).toBe("wrong");
  expect(outcomeOf(clear("i c p fifteen"))).toBe("askedWrong");
  expect(outcomeOf(clear("rate and"))).toBe("silent");
});

it("has at least 150 phrases, each of which means in its case what its table says", () => {
  expect(PHRASES.length).toBeGreaterThanOrEqual(150);
  for (const { words, meant, state } of PHRASES)
    expect([words, meantText(understand(context.grammars.of(state), normalise(words)))]).toEqual([words, meant]);
});
