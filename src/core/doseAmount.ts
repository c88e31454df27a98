import type { DoseUnit } from "./doseUnits.ts";
import { quantityOf, type Quantity, type QuantityError } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";

/** So much of a drug, or of a fluid. Only `amount` makes one, so its number is always positive and finite. */
export type Amount = { readonly value: Quantity<"amount">; readonly unit: DoseUnit };

/** One unit cannot be had from the other without knowing the substance. */
export type UnitMismatch = { readonly kind: "unit-mismatch"; readonly from: DoseUnit; readonly to: DoseUnit };

/** Masses share one span, so that a conversion never leaves it. This project's check against slips, not clinical. */
const DOORS = {
  mcg: quantityOf<"amount">({ min: 1e-3, max: 1e9 }),
  mg: quantityOf<"amount">({ min: 1e-6, max: 1e6 }),
  g: quantityOf<"amount">({ min: 1e-9, max: 1e3 }),
  units: quantityOf<"amount">({ min: 1e-3, max: 1e7 }),
  mmol: quantityOf<"amount">({ min: 1e-6, max: 1e4 }),
  mL: quantityOf<"amount">({ min: 1e-3, max: 2e4 }),
} as const satisfies Record<DoseUnit, (n: number) => Result<Quantity<"amount">, QuantityError>>;

const MCG_PER: Readonly<Partial<Record<DoseUnit, number>>> = { mcg: 1, mg: 1e3, g: 1e6 };

/**
 * The one checked door to an amount.
 *
 * @param value in `unit`, above zero.
 * @param unit  as ordered or labelled.
 * @returns     the amount; or `not-a-number`, or `out-of-range` with the limits of that unit, ends included.
 *
 * Not for: whether the dose is right for anybody.
 */
export function amount(value: number, unit: DoseUnit): Result<Amount, QuantityError> {
  const checked = DOORS[unit](value);
  return checked.ok ? ok({ value: checked.value, unit }) : checked;
}

/**
 * The same amount in another unit.
 *
 * @param given an amount.
 * @param unit  wanted.
 * @returns     the amount in `unit`, unrounded; or `unit-mismatch` between mass, units, mmol and mL.
 *
 * Not for: mass from mmol or units, which depends on the substance.
 * Source: definition; 1 g = 1000 mg = 1,000,000 mcg.
 */
export function convertAmount(given: Amount, unit: DoseUnit): Result<Amount, UnitMismatch> {
  if (given.unit === unit) return ok(given);
  const from = MCG_PER[given.unit];
  const to = MCG_PER[unit];
  if (from === undefined || to === undefined) return fail({ kind: "unit-mismatch", from: given.unit, to: unit });
  // A whole factor, never its reciprocal: a thousandth is not exact in binary and would cost the last digit.
  const value = from > to ? given.value * (from / to) : given.value / (to / from);
  return ok({ value: value as Amount["value"], unit });
}

/**
 * Whether a number is over a limit by more than doubles lose: 0.6 mL against 5.999999999999999 tenths is not.
 *
 * @param value in the unit of the limit.
 * @param limit zero or above.
 */
export const isOver = (value: number, limit: number): boolean => value > limit * (1 + 1e-9);
