import { expect, test } from "vitest";
import { heardNumber } from "../../src/cli/hearNumber.ts";

// Free score −2 over 10 phones: the grammar may cost 2.06 nats before m1 (−0.206) is passed; m2 asks for 2.59.
const free = { score: -2, phones: 10 };

test.each([
  ["sure", [["one ten", -2]], 110],
  ["just within m1", [["one ten", -4]], 110],
  ["just outside m1", [["one ten", -4.1]], null],
  [
    "another number close by",
    [
      ["fifteen", -2],
      ["fifty", -4.5],
    ],
    null,
  ],
  [
    "another number far off",
    [
      ["fifteen", -2],
      ["fifty", -4.6],
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
