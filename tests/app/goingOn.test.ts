import { describe, expect, it } from "vitest";
import type { Utterance } from "../../src/app/ports.ts";
import { playCase, shortFacts } from "./playCase.ts";

const PHONES = 12;
const NOTHING_LIKE_IT = -60;
const sound = (words: string, score: number) => ({
  candidates: [{ words, score }],
  free: { score: 0, phones: PHONES },
});
const clear = (words: string): Utterance => ({ by: "listener", ...sound(words, 0), endedAtMs: 0 });
/** After a pause, with what it is together with the last words; by itself it fits its words so well. */
const later = (alone: string, score: number, whole: string, wholeScore = 0): Utterance => ({
  by: "listener",
  ...sound(alone, score),
  withLast: sound(whole, wholeScore),
  endedAtMs: 0,
});

type Row = readonly [first: string, then: Utterance, outcome: string, facts: string, reply: string];
const ROWS: readonly Row[] = [
  ["sats ninety", later("four", NOTHING_LIKE_IT, "sats ninety four"), "asked", "asked acoustic", "Sats ninety four?"],
  [
    "map one hundred",
    later("next", NOTHING_LIKE_IT, "map one hundred and ten"),
    "asked",
    "asked acoustic",
    "MAP one ten?",
  ],
  // Talk after a value, and a value with the talk after it, are nothing.
  ["sats ninety", later("four", NOTHING_LIKE_IT, "sats ninety four", NOTHING_LIKE_IT), "ignored", "", ""],
  // What means something by itself is that, whatever both would be.
  ["rate seventy", later("sats ninety six", 0, "rate seventy six"), "recorded", "spo2 96", "Sats ninety six."],
  // Only values are asked about.
  ["next", later("four", NOTHING_LIKE_IT, "next"), "ignored", "", ""],
];

describe("a number that goes on after a long pause", () => {
  it.each(ROWS)("%s …", async (first, then, outcome, facts, reply) => {
    const { answers } = await playCase([clear(first), then]);
    expect([answers[1]?.outcome, shortFacts(answers[1]?.facts ?? []), answers[1]?.reply]).toEqual([
      outcome,
      facts,
      reply,
    ]);
  });

  it("is recorded when it is affirmed", async () => {
    const { answers } = await playCase([
      clear("sats ninety"),
      later("four", NOTHING_LIKE_IT, "sats ninety four"),
      clear("affirm"),
    ]);
    expect(shortFacts(answers[2]?.facts ?? [])).toBe("closed affirmed, spo2 94");
  });
});
