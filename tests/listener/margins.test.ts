import { describe, expect, it } from "vitest";
import { m1, m2 } from "../../src/listener/margins.ts";
import { MAX_CANDIDATES } from "../../src/listener/search.ts";

describe("m1", () => {
  it.each([
    { best: -1, free: { score: -1, phones: 8 }, margin: 0 },
    { best: -9, free: { score: -1, phones: 8 }, margin: -1 },
    { best: -4, free: { score: -1, phones: 1 }, margin: -1 },
    { best: -4, free: { score: -1, phones: 0 }, margin: -1 },
  ])("$best against $free is $margin", ({ best, free, margin }) => {
    expect(m1(best, free)).toBeCloseTo(margin, 9);
  });
});

describe("m2", () => {
  const numberOf = (words: string) =>
    ({ "one oh five": "105", "a hundred and five": "105", "one five": "15", "sats five": "s5" })[words];
  const list = (...words: string[]) => words.map((text, i) => ({ words: text, score: -i }));

  it.each([
    { candidates: list("one oh five", "one five"), margin: 1 },
    { candidates: list("one oh five", "a hundred and five", "one five"), margin: 2 },
    { candidates: list("one oh five", "a hundred and five"), margin: Infinity },
    { candidates: list("one oh five", "without meaning", "one five"), margin: 1 },
    { candidates: list("without meaning", "without meaning either"), margin: 1 },
    { candidates: list("one oh five"), margin: Infinity },
    { candidates: [], margin: Infinity },
  ])("$candidates gives $margin", ({ candidates, margin }) => {
    expect(m2(candidates, numberOf)).toBe(margin);
  });

  it("claims no more than a full list shows", () => {
    const full = list(...Array.from({ length: MAX_CANDIDATES }, (_, i) => `word ${i}`));
    expect(m2(full, () => "the same")).toBe(MAX_CANDIDATES - 1);
  });
});
