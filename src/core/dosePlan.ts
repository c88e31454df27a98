import { amount, type Amount } from "./doseAmount.ts";
import type { DoseUnit, WeightScalar } from "./doseUnits.ts";
import { orderedWeight, type DoseWeight, type NeedsWeight } from "./doseWeight.ts";
import type { QuantityError } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";

type Span = { readonly low: number; readonly usual: number; readonly high: number };

/** A dose as the protocol orders it; amounts are in `unit`, for each kilogram where `per` is "kg". */
export type DoseOrder = Span & {
  readonly per: "kg" | "dose";
  readonly unit: DoseUnit;
  readonly weight?: WeightScalar | undefined;
  /** Instead of the amounts above, in shock. */
  readonly shock?: Span | undefined;
  /** Never less and never more at once, in `unit`, whatever the weight. */
  readonly minimum?: number | undefined;
  readonly cap?: number | undefined;
};

export type PlannedDose = {
  readonly low: Amount;
  readonly usual: Amount;
  readonly high: Amount;
  /** The usual amount for each kilogram and the weight it was multiplied by; only for a dose by weight. */
  readonly perKg?: number;
  readonly weight?: DoseWeight;
  /** The amounts for shock were used. Those of a relaxant may be the higher ones … */
  readonly shocked: boolean;
  /** … so this says whether the usual amount ordered became less by it. */
  readonly reduced: boolean;
  /** The cap took from the usual amount, or the minimum added to it. */
  readonly capped: boolean;
  readonly raised: boolean;
  readonly kind: "computed" | "estimated";
};

/**
 * The dose for this patient.
 *
 * @param order   low, usual and high amount, for each kilogram or at once; its limits.
 * @param weight  kg, found for the scalar ordered (actual where none is named); may be missing if not by weight.
 * @param patient `shocked`: use the amounts for shock where the order has any.
 * @returns       low, usual and high amount in the unit of the order, unrounded, each within minimum and cap. Where the
 *                two contradict each other the cap holds. `estimated` where the weight used is.
 *
 * Errors: `needs-weight` with the scalar ordered; `not-a-number`, `out-of-range` where an amount is no possible one.
 * Not for: the volume to draw up; nor for saying that this drug is right for this patient.
 * Source: amount for each kilogram × weight, common practice. Every number is the order's.
 */
export function planDose(
  order: DoseOrder,
  weight: DoseWeight | undefined,
  patient: { readonly shocked: boolean },
): Result<PlannedDose, NeedsWeight | QuantityError> {
  const scalar = order.weight ?? "actual";
  const used = order.per === "kg" ? orderedWeight(scalar, weight) : undefined;
  if (order.per === "kg" && used === undefined) return fail({ kind: "needs-weight", scalar });
  const shock = patient.shocked ? order.shock : undefined;
  const ordered = shock ?? order;
  const times = used?.kg ?? 1;
  const within = (n: number): Result<Amount, QuantityError> =>
    amount(Math.min(order.cap ?? Infinity, Math.max(order.minimum ?? 0, n * times)), order.unit);
  const low = within(ordered.low);
  if (!low.ok) return low;
  const usual = within(ordered.usual);
  if (!usual.ok) return usual;
  const high = within(ordered.high);
  if (!high.ok) return high;
  return ok({
    low: low.value,
    usual: usual.value,
    high: high.value,
    ...(used !== undefined && { perKg: ordered.usual, weight: used }),
    shocked: shock !== undefined,
    reduced: ordered.usual < order.usual,
    capped: usual.value.value < ordered.usual * times,
    raised: usual.value.value > ordered.usual * times,
    kind: used?.kind === "estimated" ? "estimated" : "computed",
  });
}
