import type { PublishedRow, RowSource } from "./row.ts";

const byHand = (locator: string): RowSource => ({ reference: "worked by hand", locator, read: "by hand" });

/** Minutes and values. */
export type Points = readonly (readonly [atMin: number, value: number])[];

export const SLOPE_ROWS: readonly PublishedRow<Points>[] = [
  {
    given: [
      [0, 90],
      [5, 80],
    ],
    expected: -2,
    decimals: 3,
    source: byHand("(80 − 90) / 5"),
  },
  {
    given: [
      [0, 1],
      [1, 3],
      [2, 2],
      [3, 5],
    ],
    expected: 1.1,
    decimals: 3,
    source: byHand("mean t 1.5, mean y 2.75; 5.5 / 5"),
  },
  {
    given: [
      [0, 80],
      [0, 84],
      [2, 78],
    ],
    expected: -2,
    decimals: 3,
    source: byHand("two readings at one instant: mean t 2/3, (−16/3) / (8/3)"),
  },
];

export type FirstAndNow = { readonly first: number; readonly now: number };

/** The first three are the rise of the systolic, its pulse pressure and the fall of the heart rate of a Cushing pattern. */
export const DROP_PCT_ROWS: readonly PublishedRow<FirstAndNow>[] = [
  { given: { first: 130, now: 190 }, expected: -46, decimals: 0, source: byHand("60 / 130, a rise") },
  { given: { first: 50, now: 100 }, expected: -100, decimals: 0, source: byHand("50 / 50, a rise") },
  { given: { first: 90, now: 52 }, expected: 42, decimals: 0, source: byHand("38 / 90") },
  { given: { first: 120, now: 96 }, expected: 20, decimals: 0, source: byHand("24 / 120") },
  { given: { first: 85, now: 85 }, expected: 0, decimals: 0, source: byHand("no change") },
];

export type UntilCase = { readonly value: number; readonly level: number; readonly perMin: number };

export const UNTIL_ROWS: readonly PublishedRow<UntilCase>[] = [
  { given: { value: 88, level: 80, perMin: -2 }, expected: 4, decimals: 3, source: byHand("8 / 2") },
  { given: { value: 95, level: 90, perMin: -0.75 }, expected: 6.667, decimals: 3, source: byHand("5 / 0.75") },
];
