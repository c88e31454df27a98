import fc from "fast-check";
import { concentration, type Concentration, type Strength } from "../../src/core/concentration.ts";
import { amount, type Amount } from "../../src/core/doseAmount.ts";
import { DOSE_UNITS, RATE_UNITS, type DoseUnit } from "../../src/core/doseUnits.ts";
import type { DoseWeight } from "../../src/core/doseWeight.ts";
import { kg, ml } from "../../src/core/quantities.ts";
import { taken } from "./taken.ts";

export const some = (value: number, unit: DoseUnit): Amount => taken(amount(value, unit));
export const strong = (of: number, unit: Strength["unit"], volumeMl = 1): Concentration =>
  taken(concentration({ amount: of, unit, volumeMl }));
export const weighing = (n: number, rest: Partial<DoseWeight> = {}): DoseWeight => ({
  kg: taken(kg(n)),
  kind: "measured",
  scalar: "actual",
  ...rest,
});

export const MASSES = ["mcg", "mg", "g"] as const;
export const anyUnit = fc.constantFrom(...DOSE_UNITS);
export const anyRateUnit = fc.constantFrom(...RATE_UNITS);
export const anyKg = fc.double({ min: 2, max: 300, noNaN: true }).map((n) => taken(kg(n)));
const thousandths = (min: number, max: number) => fc.integer({ min: min * 1000, max: max * 1000 }).map((n) => n / 1000);
/** Every volume that the door lets through; mostly such as people use, since doubles are mostly tiny. */
export const anyMl = fc
  .oneof(thousandths(0, 60), thousandths(0, 20_000), fc.double({ min: 0, max: 20_000, noNaN: true }))
  .map((n) => taken(ml(n)));
/** From the smallest to the largest amount there is, in any unit. */
export const anyAmount = fc
  .record({ power: fc.double({ min: -3, max: 9, noNaN: true }), unit: anyUnit })
  .map(({ power, unit }) => amount(10 ** power, unit))
  .filter((result) => result.ok)
  .map(taken);
export const anyConcentration = fc
  .record({ of: anyAmount, volumeMl: fc.oneof(thousandths(0.001, 60), thousandths(0.001, 20_000)) })
  .map(({ of, volumeMl }) => concentration({ amount: of.value, unit: of.unit, volumeMl }))
  .filter((result) => result.ok)
  .map(taken);
/** What somebody may get wrong in a file or say: any number at all. */
export const anyNumber = fc.oneof(fc.double(), fc.constantFrom(0, -1, NaN, Infinity, -Infinity, 5e-324, 1e308));
