import type { PublishedRow, RowSource } from "./row.ts";

const byHand = (reference: string, locator: string): RowSource => ({ reference, locator, read: "by hand" });

const EXPLAINER = "Explainer on paediatric tube size: Cole's rule, and 3.5 mm for cuffed tubes after Duracher";
const TEACHING = "Airway teaching page on paediatric tube sizes, 2017";

/** Tube to take, mm. `plusMm` is what the rule adds. */
export const TUBE_ROWS: readonly PublishedRow<{ years: number; plusMm: number }>[] = [
  { given: { years: 6, plusMm: 3.5 }, expected: 5.0, decimals: 1, source: byHand(EXPLAINER, "cuffed, age/4 + 3.5") },
  { given: { years: 6, plusMm: 4 }, expected: 5.5, decimals: 1, source: byHand(EXPLAINER, "uncuffed, age/4 + 4") },
  { given: { years: 6, plusMm: 3 }, expected: 4.5, decimals: 1, source: byHand(TEACHING, "cuffed, age/4 + 3") },
];

export const DEPTH_BY_AGE_ROWS: readonly PublishedRow<{ years: number; plusCm: number }>[] = [
  {
    given: { years: 6, plusCm: 12 },
    expected: 15.0,
    decimals: 1,
    source: byHand("age/2 + 12, from memory", "depth at the lip"),
  },
  { given: { years: 6, plusCm: 13 }, expected: 16.0, decimals: 1, source: byHand(TEACHING, "age/2 + 13") },
];

export const DEPTH_BY_SIZE_ROWS: readonly PublishedRow<{ sizeMm: number }>[] = [
  { given: { sizeMm: 5 }, expected: 15.0, decimals: 1, source: byHand("Paediatrics teaching page", "3 × ID") },
];
