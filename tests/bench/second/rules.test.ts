import { describe, expect, it } from "vitest";
import { createRandom } from "../random.ts";
import type { Evidence } from "./listenAgain.ts";
import { ALONE, fallAt, rulesOf, wrongAmong } from "./rules.ts";

/** Invented: right or wrong, its margin, and what the further listening made of it. */
const CLIPS: readonly (readonly [isRight: boolean, m2: number, supportNats: number])[] = [
  [true, 20, 22],
  [true, 15, 14],
  [false, 12, -3],
  [true, 9, 11],
  [true, 6, 7],
  [false, 3, -8],
];
const EVIDENCE: readonly Evidence[] = CLIPS.map(([isRight, m2, supportNats], n) => ({
  saying: String(n),
  kind: "invented",
  condition: "quiet",
  voice: "invented",
  words: "",
  heard: "",
  isRight,
  m1: 0,
  m2,
  opinions: { copy: { agrees: supportNats > 0, supportNats } },
}));

describe("wrong accepts at equal acceptance", () => {
  it.each([
    [2, 0],
    [3, 1],
    [6, 2],
  ])("the first listening alone takes %i: %i wrong", (count, wrong) => {
    expect(wrongAmong(EVIDENCE, ALONE, count)).toBe(wrong);
  });

  it.each(rulesOf("copy").map(({ name, certaintyOf }) => ({ name, certaintyOf })))(
    "$name: takes the four right ones first",
    ({ certaintyOf }) => {
      expect(wrongAmong(EVIDENCE, certaintyOf, 4)).toBe(0);
      expect(wrongAmong(EVIDENCE, certaintyOf, 6)).toBe(2);
    },
  );

  it("counts the fall, and an interval that holds it", () => {
    const [rule] = rulesOf("copy");
    const fall = fallAt(EVIDENCE, rule?.certaintyOf ?? ALONE, 4 / 6, createRandom(1), 200);
    expect(fall).toMatchObject({ alone: 1, withIt: 0 });
    expect(fall.low).toBeLessThanOrEqual(1);
    expect(fall.high).toBeGreaterThanOrEqual(1);
  });

  it("finds no fall where nothing is added", () => {
    expect(fallAt(EVIDENCE, ALONE, 0.5, createRandom(1), 50)).toMatchObject({ low: 0, high: 0 });
  });
});
