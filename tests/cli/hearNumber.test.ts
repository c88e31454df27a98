import { expect, test } from "vitest";
import { heardNumber } from "../../src/cli/hearNumber.ts";
import { THRESHOLDS } from "../../src/listener/thresholds.ts";

const PHONES = 10;
const FREE = -2;
const free = { score: FREE, phones: PHONES };
const { m1Take, m1Loose, m2Take, m2Loose } = THRESHOLDS;
const at = (m1: number): number => FREE + m1 * PHONES;
const A_LITTLE = 0.01;

test.each([
  ["sure", [["one ten", -2]], 110],
  ["just within the loose m1, nothing near", [["one ten", at(m1Loose) + A_LITTLE]], 110],
  ["just outside it", [["one ten", at(m1Loose) - A_LITTLE]], null],
  [
    "loose, with another number too near for that",
    [
      ["one ten", at(m1Take) - A_LITTLE],
      ["one eighteen", at(m1Take) - m2Loose],
    ],
    null,
  ],
  [
    "another number close by",
    [
      ["fifteen", FREE],
      ["fifty", FREE - m2Take + A_LITTLE],
    ],
    null,
  ],
  [
    "another number far off",
    [
      ["fifteen", FREE],
      ["fifty", FREE - m2Take - A_LITTLE],
    ],
    15,
  ],
  [
    "other words for the same number",
    [
      ["one oh five", -2],
      ["a hundred and five", -2.1],
      ["one five", -9],
    ],
    105,
  ],
  ["not one number", [["one twenty eighty", -2]], null],
  ["nothing", [], null],
] as const)("%s", (_, candidates, value) => {
  expect(heardNumber({ candidates: candidates.map(([words, score]) => ({ words, score })), free })).toBe(value);
});
