import { convertAmount, type Amount, type UnitMismatch } from "./doseAmount.ts";
import type { DoseUnit } from "./doseUnits.ts";
import type { Kg, Quantity } from "./quantity.ts";
import { ok, type Result } from "./result.ts";

/** All that was given of one drug. Not an `Amount`: nothing given is a total too. */
export type DoseTotal = { readonly value: Quantity<"total">; readonly unit: DoseUnit; readonly count: number };

/**
 * What was given of one drug in all.
 *
 * @param given each amount, in any units of one kind.
 * @param unit  in which the total is wanted.
 * @returns     the sum in `unit`, unrounded, and how many amounts it is of; 0 of 0 for none.
 *
 * Errors: `unit-mismatch`; a total that leaves one out would be wrong.
 * Source: arithmetic.
 */
export function totalGiven(given: readonly Amount[], unit: DoseUnit): Result<DoseTotal, UnitMismatch> {
  let sum = 0;
  for (const one of given) {
    const converted = convertAmount(one, unit);
    if (!converted.ok) return converted;
    sum += converted.value.value;
  }
  return ok({ value: sum as DoseTotal["value"], unit, count: given.length });
}

/**
 * What was given of each drug in all.
 *
 * @param given each amount with the drug's id.
 * @returns     for each drug, in the order first given, its total in the unit first given; or `unit-mismatch` for that
 *              drug alone.
 *
 * Source: arithmetic.
 */
export function totalsByDrug(
  given: readonly { readonly drugId: string; readonly amount: Amount }[],
): ReadonlyMap<string, Result<DoseTotal, UnitMismatch>> {
  const amounts = new Map<string, [Amount, ...Amount[]]>();
  for (const { drugId, amount } of given) {
    const before = amounts.get(drugId);
    if (before === undefined) amounts.set(drugId, [amount]);
    else before.push(amount);
  }
  return new Map([...amounts].map(([drugId, all]) => [drugId, totalGiven(all, all[0].unit)]));
}

/**
 * A total for each kilogram.
 *
 * @param total in its unit.
 * @param kg    body weight; say which.
 * @returns     total / kg, in the unit of the total for each kg, unrounded.
 *
 * Source: definition.
 */
export const totalPerKg = (total: DoseTotal, kg: Kg): Quantity<"per kg"> => (total.value / kg) as Quantity<"per kg">;
