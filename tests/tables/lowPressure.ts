import type { PublishedRow, RowSource } from "./row.ts";

/** Minutes and mmHg. */
export type Samples = readonly (readonly [atMin: number, mmHg: number])[];
export type LowPressureCase = { readonly samples: Samples; readonly floorMmHg: number };

const byHand = (locator: string): RowSource => ({
  reference: "triangles and trapezia under the floor, split where the line crosses it",
  locator,
  read: "by hand",
});

/** Systolic under 90: crosses at 2 min and at 13 1/3 min. */
export const SBP_UNDER_90: LowPressureCase = {
  samples: [
    [0, 100],
    [4, 80],
    [10, 70],
    [14, 94],
  ],
  floorMmHg: 90,
};

/** CPP under 60: crosses at 3 min and at 13 4/7 min. */
const CPP_UNDER_60: LowPressureCase = {
  samples: [
    [0, 66],
    [5, 56],
    [10, 50],
    [15, 64],
  ],
  floorMmHg: 60,
};

export const DOSE_ROWS: readonly PublishedRow<LowPressureCase>[] = [
  { given: SBP_UNDER_90, expected: 133.333, decimals: 3, source: byHand("10 + 90 + 33 1/3 mmHg·min") },
  { given: CPP_UNDER_60, expected: 56.857, decimals: 3, source: byHand("4 + 35 + 17 6/7 mmHg·min") },
];

export const DOSE_HOUR_ROWS: readonly PublishedRow<LowPressureCase>[] = [
  { given: CPP_UNDER_60, expected: 0.9476, decimals: 4, source: byHand("56 6/7 mmHg·min / 60, in mmHg·h") },
];

export const BELOW_ROWS: readonly PublishedRow<LowPressureCase>[] = [
  { given: SBP_UNDER_90, expected: 11.333, decimals: 3, source: byHand("13 1/3 − 2 min") },
  { given: CPP_UNDER_60, expected: 10.571, decimals: 3, source: byHand("13 4/7 − 3 min") },
];

/** What comes out when depths are cut off at 0 and the crossing is not looked for: wrong, and kept to show that. */
export const NAIVE_DOSE_ROWS: readonly PublishedRow<LowPressureCase>[] = [
  { given: SBP_UNDER_90, expected: 150.0, decimals: 1, source: byHand("20 + 90 + 40 mmHg·min") },
];
