import { describe, expect, it } from "vitest";
import type { Utterance } from "../../src/app/ports.ts";
import { playCase, shortFacts } from "./playCase.ts";

/** As clear as it can be, in a room too loud. */
const loud = (words: string): Utterance => ({
  by: "listener",
  candidates: [{ words, score: 0 }],
  free: { score: 0, phones: 12 },
  doubtful: true,
  endedAtMs: 0,
});

type Row = readonly [before: string, heard: string, outcome: string, facts: string];
const ROWS: readonly Row[] = [
  ["next", "sats ninety four", "asked", "asked acoustic"],
  ["next", "one twenty over seventy", "asked", "asked acoustic"],
  ["next", "status", "answered", ""],
  ["icp fifteen", "one five", "recorded", "closed affirmed, icp 15"],
  ["icp fifteen", "one six", "refused", ""],
  ["icp fifteen", "affirm", "recorded", "closed affirmed, icp 15"],
  ["rate ninety", "correction eight zero", "refused", ""],
];

describe("words heard while it is too loud", () => {
  it.each(ROWS)("after %s, %s: %s", async (before, heard, outcome, facts) => {
    const { answers } = await playCase([before, loud(heard)]);
    expect([answers[1]?.outcome, shortFacts(answers[1]?.facts ?? [])]).toEqual([outcome, facts]);
  });

  it("asks about what overdrove the microphone too", async () => {
    const { doubtful: _, ...quiet } = loud("sats ninety four");
    const shape = { lengthMs: 2_000, levelDb: -3, noiseDb: -60, clipped: true };
    const { answers } = await playCase([
      { ...quiet, shape },
      { ...quiet, shape: { ...shape, clipped: false } },
    ]);
    expect(answers.map((a) => a.outcome)).toEqual(["asked", "recorded"]);
  });

  it("asks before it speaks a dose or records a step", async () => {
    const { answers } = await playCase(["weight eighty kilos", "next", loud("dose of ketamine"), loud("done")]);
    expect(answers.slice(2).map((a) => a.outcome)).toEqual(["asked", "asked"]);
    expect(answers.slice(2).flatMap((a) => a.facts.map((f) => f.type))).not.toContain("step.answered");
  });
});
