import { expect, test } from "vitest";
import { heardNumber } from "../../src/cli/hearNumber.ts";
import { leastM1, leastM2 } from "../listener/certainSound.ts";

const PHONES = 10;
const FREE = -2;
const free = { score: FREE, phones: PHONES };
const fit = leastM1("take", "value", PHONES);
const distance = leastM2("take", "value", PHONES);
const at = (m1: number): number => FREE + m1 * PHONES;
const A_LITTLE = 0.01;

test.each([
  ["sure", [["one ten", -2]], 110],
  ["fits just well enough, nothing near", [["one ten", at(fit + A_LITTLE)]], 110],
  ["fits a little worse", [["one ten", at(fit - A_LITTLE)]], null],
  [
    "another number close by",
    [
      ["fifteen", FREE],
      ["fifty", FREE - distance + A_LITTLE],
    ],
    null,
  ],
  [
    "another number far off",
    [
      ["fifteen", FREE],
      ["fifty", FREE - distance - A_LITTLE],
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
