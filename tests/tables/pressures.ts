import type { PublishedRow, RowSource } from "./row.ts";

const ONE_THIRD: RowSource = { reference: "one-third rule", locator: "DBP + (SBP − DBP) / 3", read: "by hand" };
const byHand = (locator: string): RowSource => ({ reference: "worked by hand", locator, read: "by hand" });

export const MEAN_ROWS: readonly PublishedRow<{ sbp: number; dbp: number }>[] = [
  { given: { sbp: 120, dbp: 60 }, expected: 80.0, decimals: 1, source: ONE_THIRD },
  { given: { sbp: 140, dbp: 80 }, expected: 100.0, decimals: 1, source: ONE_THIRD },
  { given: { sbp: 90, dbp: 50 }, expected: 63.33, decimals: 2, source: ONE_THIRD },
  { given: { sbp: 110, dbp: 60 }, expected: 76.67, decimals: 2, source: ONE_THIRD },
];

/** The formula was read in the abstract of Razminia et al. 2004; the numbers are worked from it by hand. */
export const MEAN_WITH_RATE_ROWS: readonly PublishedRow<{ sbp: number; dbp: number; hr: number }>[] = [
  { given: { sbp: 120, dbp: 60, hr: 110 }, expected: 87.72, decimals: 2, source: byHand("60 + 0.462 × 60") },
  { given: { sbp: 120, dbp: 60, hr: 60 }, expected: 84.12, decimals: 2, source: byHand("60 + 0.402 × 60") },
];

export const PULSE_PRESSURE_ROWS: readonly PublishedRow<{ sbp: number; dbp: number }>[] = [
  { given: { sbp: 120, dbp: 60 }, expected: 60, decimals: 0, source: byHand("120 − 60") },
  { given: { sbp: 130, dbp: 80 }, expected: 50, decimals: 0, source: byHand("130 − 80") },
  { given: { sbp: 190, dbp: 90 }, expected: 100, decimals: 0, source: byHand("190 − 90") },
];

/** MAP − ICP is the definition in the NACCS and SBNS joint position statement, Br J Anaesth 2015. */
export const CPP_ROWS: readonly PublishedRow<{ map: number; icp: number }>[] = [
  { given: { map: 80, icp: 22 }, expected: 58, decimals: 0, source: byHand("80 − 22") },
  { given: { map: 90, icp: 30 }, expected: 60, decimals: 0, source: byHand("90 − 30") },
  { given: { map: 60, icp: 22 }, expected: 38, decimals: 0, source: byHand("60 − 22") },
  { given: { map: 80, icp: 20 }, expected: 60, decimals: 0, source: byHand("80 − 20") },
  { given: { map: 20, icp: 35 }, expected: -15, decimals: 0, source: byHand("20 − 35") },
];

export const MAP_FOR_CPP_ROWS: readonly PublishedRow<{ target: number; icp: number }>[] = [
  { given: { target: 60, icp: 25 }, expected: 85, decimals: 0, source: byHand("60 + 25") },
  { given: { target: 60, icp: 30 }, expected: 90, decimals: 0, source: byHand("60 + 30") },
];

export const ICP_BOUND_ROWS: readonly PublishedRow<{ map: number; target: number }>[] = [
  { given: { map: 80, target: 60 }, expected: 20, decimals: 0, source: byHand("80 − 60") },
  { given: { map: 72, target: 50 }, expected: 22, decimals: 0, source: byHand("72 − 50") },
];

type RangeRow = {
  readonly map: number;
  readonly icp: { readonly low: number; readonly high: number };
  readonly cpp: { readonly lowMmHg: number; readonly highMmHg: number };
};
/** Worked by hand. */
export const CPP_RANGE_ROWS: readonly RangeRow[] = [
  { map: 85, icp: { low: 20, high: 30 }, cpp: { lowMmHg: 55, highMmHg: 65 } },
  { map: 90, icp: { low: 20, high: 30 }, cpp: { lowMmHg: 60, highMmHg: 70 } },
  { map: 25, icp: { low: 20, high: 30 }, cpp: { lowMmHg: -5, highMmHg: 5 } },
];

export const DEFICIT_ROWS: readonly PublishedRow<{ value: number; target: number }>[] = [
  { given: { value: 58, target: 60 }, expected: 2, decimals: 0, source: byHand("60 − 58") },
  { given: { value: 80, target: 90 }, expected: 10, decimals: 0, source: byHand("90 − 80") },
  { given: { value: 104, target: 100 }, expected: 0, decimals: 0, source: byHand("met") },
  { given: { value: 100, target: 100 }, expected: 0, decimals: 0, source: byHand("met") },
];
