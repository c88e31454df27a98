import { describe, expect, it } from "vitest";
import type { Utterance } from "../../src/app/ports.ts";
import { playCase, shortFacts } from "./playCase.ts";

/** Heard while our own voice sounded: as clear as it can be, and still doubted. */
const over = (words: string): Utterance => ({
  by: "listener",
  candidates: [{ words, score: 0 }],
  free: { score: 0, phones: 12 },
  overlapped: true,
  endedAtMs: 0,
});

// Our voice has just said "ICP fifteen, one five?".
const ROWS: readonly (readonly [heard: string, outcome: string, facts: string])[] = [
  ["one five", "ignored", ""],
  ["fifteen", "ignored", ""],
  ["i c p fifteen", "ignored", ""],
  ["five zero", "refused", ""],
  ["affirm", "recorded", "closed affirmed, icp 15"],
  ["negative", "answered", "closed denied"],
  ["sats ninety four", "asked", "asked acoustic"],
  ["i c p five zero", "asked", "closed restated, asked acoustic"],
  ["next", "answered", "called bleeding"],
];

describe("words heard over our own voice", () => {
  it.each(ROWS)("%s: %s", async (heard, outcome, facts) => {
    const { answers } = await playCase(["icp fifteen", over(heard)]);
    expect([answers[1]?.outcome, shortFacts(answers[1]?.facts ?? [])]).toEqual([outcome, facts]);
  });
});

// Our voice has just said "MAP seventy seven, thirteen under ninety. Pressure one ten over sixty."
const NEARLY_OURS: readonly (readonly [heard: string, outcome: string, facts: string])[] = [
  ["map seventy seven pressure one ten over sixty", "refused", ""],
  ["pressure one ten over sixteen", "asked", "asked implausible"],
  ["blood pressure one twenty over seventy", "asked", "asked acoustic"],
];

describe("words that are nearly ours, heard over our own voice", () => {
  it.each(NEARLY_OURS)("%s: %s", async (heard, outcome, facts) => {
    const { answers } = await playCase(["110/60", over(heard)]);
    expect([answers[1]?.outcome, shortFacts(answers[1]?.facts ?? [])]).toEqual([outcome, facts]);
  });
});
