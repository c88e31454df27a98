import { amount, convertAmount, type Amount, type UnitMismatch } from "./doseAmount.ts";
import type { DoseUnit } from "./doseUnits.ts";
import type { Ml, Quantity, QuantityError } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";

/** So much drug in so much fluid, as a label or a person says it: 4 mg in 250 mL. */
export type Strength = { readonly amount: number; readonly unit: DoseUnit; readonly volumeMl: number };

/** A checked strength. It stays a pair: 4 mg in 250 mL is said like that, and divides without a rounded middle. */
export type Concentration = { readonly amount: Amount; readonly volumeMl: Ml };

export type ConcentrationError =
  | QuantityError
  /** A volume in a volume says nothing about a drug. */
  | { readonly kind: "not-a-strength" };

const ML_OF_A_PERCENTAGE = 100;

/**
 * The one checked door to a concentration.
 *
 * @param strength an amount in its unit, and the volume that holds it, mL; both above zero.
 * @returns        the concentration; `not-a-strength` where the amount is a volume, `not-a-number` or `out-of-range`
 *                 where amount or volume is no possible one.
 *
 * Not for: whether such a strength is on sale.
 */
export function concentration(strength: Strength): Result<Concentration, ConcentrationError> {
  if (strength.unit === "mL") return fail({ kind: "not-a-strength" });
  const drug = amount(strength.amount, strength.unit);
  if (!drug.ok) return drug;
  const volume = amount(strength.volumeMl, "mL");
  if (!volume.ok) return volume;
  return ok({ amount: drug.value, volumeMl: volume.value.value as number as Ml });
}

/**
 * The concentration of a solution that is labelled in per cent.
 *
 * @param percent grams in 100 mL, above zero.
 * @returns       that many grams in 100 mL; or `not-a-number` or `out-of-range`.
 *
 * Not for: per cent by weight or by volume.
 * Source: definition of mass by volume, g in 100 mL.
 */
export const percentConcentration = (percent: number): Result<Concentration, ConcentrationError> =>
  concentration({ amount: percent, unit: "g", volumeMl: ML_OF_A_PERCENTAGE });

/**
 * How much drug each millilitre holds.
 *
 * @param of   a checked concentration.
 * @param unit wanted.
 * @returns    amount / volume, in `unit` for each mL, unrounded; or `unit-mismatch`.
 *
 * Source: definition.
 */
export function perMl(of: Concentration, unit: DoseUnit): Result<Quantity<"per mL">, UnitMismatch> {
  const drug = convertAmount(of.amount, unit);
  if (!drug.ok) return drug;
  return ok((drug.value.value / of.volumeMl) as Quantity<"per mL">);
}
