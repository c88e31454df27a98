import { convertAmount, isOver, type Amount, type UnitMismatch } from "./doseAmount.ts";
import type { Quantity } from "./quantity.ts";
import { ok, type Result } from "./result.ts";

export type DoseComparison = {
  /** Of the usual dose: −50 is half of it, 900 is ten times it. */
  readonly percentOff: Quantity<"% off">;
  readonly overCap: boolean;
};

/**
 * How far a dose that was said is from the one worked out.
 *
 * @param given   as said.
 * @param planned the usual dose of the plan.
 * @param cap     never more than this at once; none where the order has none.
 * @returns       (given / planned − 1) × 100, %, unrounded, and whether the cap is exceeded.
 *
 * Errors: `unit-mismatch` where the dose said is not in a unit of the plan or of the cap.
 * Not for: deciding what to ask.
 * Source: arithmetic.
 */
export function compareDose(given: Amount, planned: Amount, cap?: Amount): Result<DoseComparison, UnitMismatch> {
  const inPlan = convertAmount(given, planned.unit);
  if (!inPlan.ok) return inPlan;
  const limit = cap === undefined ? ok(undefined) : convertAmount(cap, planned.unit);
  if (!limit.ok) return limit;
  const said = inPlan.value.value;
  const overCap = limit.value !== undefined && isOver(said, limit.value.value);
  return ok({ percentOff: ((said / planned.value - 1) * 100) as Quantity<"% off">, overCap });
}
