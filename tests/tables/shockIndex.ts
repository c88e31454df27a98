import type { ChildShockLimit } from "../../src/core/childShockIndex.ts";
import type { PublishedRow, RowSource } from "./row.ts";

const byHand = (locator: string): RowSource => ({ reference: "worked by hand", locator, read: "by hand" });

export const SHOCK_INDEX_ROWS: readonly PublishedRow<{ hr: number; sbp: number }>[] = [
  { given: { hr: 110, sbp: 120 }, expected: 0.917, decimals: 3, source: byHand("110 / 120") },
  { given: { hr: 130, sbp: 95 }, expected: 1.37, decimals: 2, source: byHand("130 / 95") },
];

export const MODIFIED_ROWS: readonly PublishedRow<{ hr: number; map: number }>[] = [
  { given: { hr: 110, map: 80 }, expected: 1.375, decimals: 3, source: byHand("110 / 80") },
];

export const AGE_ROWS: readonly PublishedRow<{ age: number; hr: number; sbp: number }>[] = [
  { given: { age: 70, hr: 110, sbp: 120 }, expected: 64.2, decimals: 1, source: byHand("70 × 110 / 120") },
];

/** Upper limits of children as they are taught: 4 to 6 years 1.22, 7 to 12 1.0, 13 to 16 0.9. From memory, verify. */
export const CHILD_LIMITS: readonly ChildShockLimit[] = [
  { fromAgeA: 4, belowAgeA: 7, upper: 1.22 },
  { fromAgeA: 7, belowAgeA: 13, upper: 1 },
  { fromAgeA: 13, belowAgeA: 17, upper: 0.9 },
];
