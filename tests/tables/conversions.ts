import type { VitalCode } from "../../src/core/vitals.ts";

export type ConversionRow = {
  readonly code: VitalCode;
  readonly said: number;
  readonly unit: string;
  readonly stored: number;
  /** Half of the last digit of what the source prints. */
  readonly within: number;
  readonly source: string;
};

const UCUM = "printed by @lhncbc/ucum-lhc 7.1.10, convertUnitTo, run on 2026-11-25";
/**
 * UCUM's table has 133.3220 Pa in a millimetre of mercury, NIST's 133.3224: the two judges differ by three parts in a
 * million, so neither can be met closer than that (100 mmHg by 0.0003).
 */
const PA_APART = 100 * (133.3224 / 133.322 - 1);
const SP811 = "NIST SP 811, appendix B.8, factor from memory, verify";

export const CONVERSIONS: readonly ConversionRow[] = [
  { code: "etco2", said: 5, unit: "kPa", stored: 37.50318777096053, within: PA_APART, source: UCUM },
  { code: "etco2", said: 4.5, unit: "kPa", stored: 33.75286899386448, within: PA_APART, source: UCUM },
  { code: "map", said: 13, unit: "kPa", stored: 97.50828820449738, within: PA_APART, source: UCUM },
  { code: "icp", said: 20, unit: "cmH2O", stored: 14.711225454163603, within: PA_APART, source: UCUM },
  { code: "icp", said: 27, unit: "cmH2O", stored: 19.860154363120866, within: PA_APART, source: UCUM },
  { code: "temp", said: 98.6, unit: "degF", stored: 37, within: 1e-9, source: UCUM },
  { code: "temp", said: 101.3, unit: "degF", stored: 38.5, within: 1e-9, source: UCUM },
  { code: "weight", said: 176, unit: "lb", stored: 79.83225712, within: 1e-8, source: UCUM },
  { code: "height", said: 70, unit: "in", stored: 177.8, within: 1e-9, source: UCUM },
  // The molar mass given to the library was 180.156 g/mol; ours has one digit less.
  { code: "glucose", said: 180, unit: "mg/dL", stored: 9.9913, within: 5e-4, source: UCUM },
  { code: "glucose", said: 60, unit: "mg/dL", stored: 3.3304, within: 5e-4, source: UCUM },
  { code: "sbp", said: 1000 / 133.3224, unit: "kPa", stored: 1e6 / 133.3224 ** 2, within: 1e-4, source: SP811 },
  { code: "weight", said: 1, unit: "lb", stored: 0.4535924, within: 5e-8, source: SP811 },
  { code: "height", said: 1, unit: "in", stored: 2.54, within: 5e-9, source: SP811 },
];
