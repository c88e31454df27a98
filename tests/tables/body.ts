import type { Sex } from "../../src/core/bodySize.ts";
import type { PublishedRow, RowSource } from "./row.ts";

const byHand = (reference: string, locator: string): RowSource => ({ reference, locator, read: "by hand" });

type Height = { readonly heightCm: number; readonly sex: Sex };
type Body = Height & { readonly kg: number };

const DEVINE = byHand("Devine 1974, from memory", "inch form");
export const IDEAL_ROWS: readonly PublishedRow<Height>[] = [
  { given: { heightCm: 178, sex: "male" }, expected: 73.18, decimals: 2, source: DEVINE },
  { given: { heightCm: 70 * 2.54, sex: "male" }, expected: 73.0, decimals: 1, source: DEVINE },
  { given: { heightCm: 60 * 2.54, sex: "female" }, expected: 45.5, decimals: 1, source: DEVINE },
  { given: { heightCm: 64 * 2.54, sex: "female" }, expected: 54.7, decimals: 1, source: DEVINE },
];

const ARDS = byHand("ARDS Network, from memory", "centimetre form, 0.91 kg/cm");
/** cm; men kg, and 6 mL for each of them; women kg, and 6 mL. */
const PREDICTED = [
  [152.4, 50.0, 300, 45.5, 273],
  [160, 56.9, 341, 52.4, 314],
  [165, 61.5, 369, 57.0, 342],
  [170, 66.0, 396, 61.5, 369],
  [175, 70.6, 423, 66.1, 396],
  [178, 73.3, 440, 68.8, 413],
  [180, 75.1, 451, 70.6, 424],
  [183, 77.8, 467, 73.3, 440],
  [190, 84.2, 505, 79.7, 478],
  [193, 86.9, 522, 82.4, 495],
] as const;
const row = (heightCm: number, sex: Sex, expected: number, decimals: number): PublishedRow<Height> => ({
  given: { heightCm, sex },
  expected,
  decimals,
  source: ARDS,
});
export const PREDICTED_ROWS: readonly PublishedRow<Height>[] = [
  // 50 + 0.91 × 25.6 is 73.296 exactly; 73.29 where it is printed cut off.
  row(178, "male", 73.296, 3),
  row(163, "female", 55.15, 2),
  ...PREDICTED.flatMap(([cm, men, , women]) => [row(cm, "male", men, 1), row(cm, "female", women, 1)]),
];
/** At 6 mL for each predicted kilogram. */
export const SIX_ML_ROWS: readonly PublishedRow<Height>[] = PREDICTED.flatMap(([cm, , men, , women]) => [
  row(cm, "male", men, 0),
  row(cm, "female", women, 0),
]);

const LEAN = byHand("Janmahasatian et al. 2005, from memory", "lean weight");
export const LEAN_ROWS: readonly PublishedRow<Body>[] = [
  { given: { kg: 70, heightCm: 175, sex: "male" }, expected: 55.86, decimals: 2, source: LEAN },
  { given: { kg: 110, heightCm: 178, sex: "male" }, expected: 71.92, decimals: 2, source: LEAN },
  { given: { kg: 130, heightCm: 178, sex: "male" }, expected: 77.54, decimals: 2, source: LEAN },
  { given: { kg: 60, heightCm: 163, sex: "female" }, expected: 38.92, decimals: 2, source: LEAN },
  { given: { kg: 100, heightCm: 163, sex: "female" }, expected: 51.6, decimals: 2, source: LEAN },
];

const ADJUSTED = byHand("common practice, no source", "IBW + 0.4 × (TBW − IBW)");
export const ADJUSTED_ROWS: readonly PublishedRow<{ actualKg: number; idealKg: number }>[] = [
  { given: { actualKg: 130, idealKg: 73.3 }, expected: 95.98, decimals: 2, source: ADJUSTED },
];

const BMI = byHand("definition", "kg / m²");
export const BMI_ROWS: readonly PublishedRow<{ kg: number; heightCm: number }>[] = [
  { given: { kg: 110, heightCm: 178 }, expected: 34.72, decimals: 2, source: BMI },
];

const APLS = byHand(
  "APLS, as printed by Marikar D. BMJ Innov 2015. doi:10.1136/bmjinnov-2015-000059",
  "formulas by age",
);
const byAge = (years: number, expected: number, decimals = 0): PublishedRow<{ years: number }> => ({
  given: { years },
  expected,
  decimals,
  source: APLS,
});
export const AGE_ROWS: readonly PublishedRow<{ years: number }>[] = [
  byAge(6 / 12, 7),
  byAge(1, 10),
  byAge(4, 16),
  byAge(6, 25),
  byAge(10, 37),
  byAge(1 / 12, 4.5, 1),
  byAge(11 / 12, 9.5, 1),
  byAge(5, 18),
  byAge(12, 43),
];

const OLDER = byHand(
  "Luscombe and Owens group. Emerg Med J 2011;28:590-593. doi:10.1136/emj.2009.087288",
  "older form",
);
export const OLDER_AGE_ROWS: readonly PublishedRow<{ years: number }>[] = [
  { given: { years: 6 }, expected: 20, decimals: 0, source: OLDER },
  { given: { years: 1 }, expected: 10, decimals: 0, source: OLDER },
  { given: { years: 10 }, expected: 28, decimals: 0, source: OLDER },
];
