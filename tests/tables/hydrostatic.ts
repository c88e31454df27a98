import type { PublishedRow, RowSource } from "./row.ts";

const byHand = (locator: string): RowSource => ({
  reference: "blood at 1.06 g/mL, 9.80665 m/s², 133.322 Pa/mmHg",
  locator,
  read: "by hand",
});

export const COLUMN_ROWS: readonly PublishedRow<{ heightCm: number }>[] = [
  { given: { heightCm: 1 }, expected: 0.78, decimals: 3, source: byHand("1060 × 9.80665 × 0.01 / 133.322") },
  { given: { heightCm: 10 }, expected: 7.8, decimals: 2, source: byHand("10 × 0.780") },
  { given: { heightCm: 15 }, expected: 11.7, decimals: 1, source: byHand("15 × 0.780") },
  { given: { heightCm: 0 }, expected: 0, decimals: 9, source: byHand("no height") },
  { given: { heightCm: -10 }, expected: -7.8, decimals: 2, source: byHand("−10 × 0.780") },
];

export const HEIGHT_ROWS: readonly PublishedRow<{ torsoCm: number; tiltDeg: number }>[] = [
  { given: { torsoCm: 30, tiltDeg: 30 }, expected: 15.0, decimals: 1, source: byHand("30 × sin 30°") },
  { given: { torsoCm: 30, tiltDeg: 20 }, expected: 10.26, decimals: 2, source: byHand("30 × sin 20°") },
  { given: { torsoCm: 30, tiltDeg: 0 }, expected: 0, decimals: 9, source: byHand("flat") },
  { given: { torsoCm: 30, tiltDeg: 90 }, expected: 30, decimals: 9, source: byHand("upright") },
  { given: { torsoCm: 30, tiltDeg: -30 }, expected: -15.0, decimals: 1, source: byHand("head down") },
];

export const BRAIN_LEVEL_ROWS: readonly PublishedRow<{ map: number; heightCm: number }>[] = [
  { given: { map: 80, heightCm: 15 }, expected: 68.3, decimals: 1, source: byHand("80 − 11.7") },
  { given: { map: 80, heightCm: 0 }, expected: 80, decimals: 9, source: byHand("no height") },
  { given: { map: 80, heightCm: -10 }, expected: 87.8, decimals: 1, source: byHand("80 + 7.80") },
  { given: { map: 20, heightCm: 40 }, expected: 0, decimals: 9, source: byHand("20 − 31.2, never under 0") },
];

export const CPP_AT_BRAIN_ROWS: readonly PublishedRow<{ map: number; icp: number; heightCm: number }>[] = [
  { given: { map: 80, icp: 22, heightCm: 15 }, expected: 46.3, decimals: 1, source: byHand("68.3 − 22") },
];
