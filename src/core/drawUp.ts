import type { Concentration } from "./concentration.ts";
import { amount, convertAmount, type Amount, type UnitMismatch } from "./doseAmount.ts";
import { ml } from "./quantities.ts";
import type { Ml, QuantityError } from "./quantity.ts";
import type { Result } from "./result.ts";

// There is no way from a drug to a volume but through a concentration that somebody has read off a label.

/**
 * The volume that holds a dose.
 *
 * @param dose an amount of drug.
 * @param of   the concentration in the hand.
 * @returns    dose / concentration, mL, unrounded.
 *
 * Errors: `unit-mismatch`; `out-of-range` where no syringe or bag is that large.
 * Not for: what a syringe can show; see `drawUp`.
 * Source: arithmetic; worked as dose × volume / amount.
 */
export function volumeFor(dose: Amount, of: Concentration): Result<Ml, UnitMismatch | QuantityError> {
  const drug = convertAmount(dose, of.amount.unit);
  if (!drug.ok) return drug;
  return ml((drug.value.value * of.volumeMl) / of.amount.value);
}

/**
 * The dose that a volume holds.
 *
 * @param volumeMl mL.
 * @param of       the concentration in the hand.
 * @returns        volume × concentration, in the unit of the concentration, unrounded.
 *
 * Errors: `out-of-range` where that is no possible amount: none of an empty syringe.
 * Source: arithmetic; worked as volume × amount / volume of the strength.
 */
export const doseIn = (volumeMl: Ml, of: Concentration): Result<Amount, QuantityError> =>
  amount((volumeMl * of.amount.value) / of.volumeMl, of.amount.unit);
