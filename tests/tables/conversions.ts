import type { VitalCode } from "../../src/core/vitals.ts";
import type { PublishedRow, RowSource } from "./row.ts";

/** Of which vital, the number converted, and the unit that is not the stored one. */
export type Conversion = { readonly code: VitalCode; readonly value: number; readonly unit: string };
type Row = PublishedRow<Conversion>;

const BY_HAND: RowSource = { reference: "factor × value", locator: "factors below", read: "by hand" };
const SP811: RowSource = { reference: "NIST SP 811 (2008)", locator: "appendix B.8", read: "memory" };
const MOLAR_MASS: RowSource = { reference: "glucose, 180.16 g/mol", locator: "x 18.016", read: "memory" };
const DEFINITION: RowSource = { reference: "definition of the Fahrenheit scale", locator: "32, 212", read: "memory" };

/** From the unit as said to the stored one. */
export const TO_STORED: readonly Row[] = [
  { given: { code: "etco2", value: 1, unit: "kPa" }, expected: 7.50062, decimals: 5, source: SP811 },
  { given: { code: "icp", value: 1, unit: "cmH2O" }, expected: 0.735559, decimals: 6, source: SP811 },
  { given: { code: "icp", value: 1, unit: "cmH2O" }, expected: 0.73556, decimals: 5, source: SP811 },
  { given: { code: "weight", value: 1, unit: "lb" }, expected: 0.4535924, decimals: 7, source: SP811 },
  { given: { code: "height", value: 1, unit: "in" }, expected: 2.54, decimals: 8, source: SP811 },
  { given: { code: "etco2", value: 5, unit: "kPa" }, expected: 37.5, decimals: 2, source: BY_HAND },
  { given: { code: "etco2", value: 4.5, unit: "kPa" }, expected: 33.75, decimals: 2, source: BY_HAND },
  { given: { code: "etco2", value: 4, unit: "kPa" }, expected: 30.0, decimals: 1, source: BY_HAND },
  { given: { code: "etco2", value: 4.5, unit: "kPa" }, expected: 33.8, decimals: 1, source: BY_HAND },
  { given: { code: "map", value: 13, unit: "kPa" }, expected: 97.5, decimals: 1, source: BY_HAND },
  { given: { code: "icp", value: 27, unit: "cmH2O" }, expected: 19.86, decimals: 2, source: BY_HAND },
  { given: { code: "icp", value: 20, unit: "cmH2O" }, expected: 14.71, decimals: 2, source: BY_HAND },
  { given: { code: "weight", value: 176, unit: "lb" }, expected: 79.83, decimals: 2, source: BY_HAND },
  { given: { code: "height", value: 70, unit: "in" }, expected: 177.8, decimals: 1, source: BY_HAND },
  { given: { code: "temp", value: 98.6, unit: "degF" }, expected: 37.0, decimals: 1, source: BY_HAND },
  { given: { code: "temp", value: 101.3, unit: "degF" }, expected: 38.5, decimals: 1, source: BY_HAND },
  { given: { code: "temp", value: 32, unit: "degF" }, expected: 0, decimals: 6, source: DEFINITION },
  { given: { code: "temp", value: 212, unit: "degF" }, expected: 100, decimals: 6, source: DEFINITION },
  { given: { code: "glucose", value: 70, unit: "mg/dL" }, expected: 3.9, decimals: 1, source: MOLAR_MASS },
  { given: { code: "glucose", value: 100, unit: "mg/dL" }, expected: 5.6, decimals: 1, source: MOLAR_MASS },
  { given: { code: "glucose", value: 180, unit: "mg/dL" }, expected: 10.0, decimals: 1, source: MOLAR_MASS },
  { given: { code: "age", value: 6, unit: "mo" }, expected: 0.5, decimals: 6, source: BY_HAND },
  { given: { code: "age", value: 18, unit: "mo" }, expected: 1.5, decimals: 6, source: BY_HAND },
];

/** From the stored unit to another. */
export const FROM_STORED: readonly Row[] = [
  { given: { code: "map", value: 1, unit: "kPa" }, expected: 0.133322, decimals: 6, source: SP811 },
  { given: { code: "map", value: 1, unit: "kPa" }, expected: 0.1333224, decimals: 7, source: SP811 },
  { given: { code: "icp", value: 1, unit: "cmH2O" }, expected: 1.35951, decimals: 5, source: SP811 },
  { given: { code: "etco2", value: 35, unit: "kPa" }, expected: 4.666, decimals: 3, source: BY_HAND },
  { given: { code: "etco2", value: 40, unit: "kPa" }, expected: 5.333, decimals: 3, source: BY_HAND },
  { given: { code: "icp", value: 22, unit: "cmH2O" }, expected: 29.91, decimals: 2, source: BY_HAND },
  { given: { code: "glucose", value: 1, unit: "mg/dL" }, expected: 18.016, decimals: 3, source: MOLAR_MASS },
  { given: { code: "glucose", value: 10, unit: "mg/dL" }, expected: 180.2, decimals: 1, source: MOLAR_MASS },
  { given: { code: "temp", value: 37, unit: "degF" }, expected: 98.6, decimals: 1, source: BY_HAND },
  { given: { code: "temp", value: -40, unit: "degF" }, expected: -40, decimals: 6, source: DEFINITION },
  { given: { code: "age", value: 1.5, unit: "mo" }, expected: 18, decimals: 6, source: BY_HAND },
];
