import type { Concentration } from "./concentration.ts";
import type { RateUnit, WeightScalar } from "./doseUnits.ts";
import { orderedWeight, type DoseWeight, type NeedsWeight } from "./doseWeight.ts";
import { infusionRate, isPerKg, pumpRate, type InfusionRate, type MlPerH, type RateError } from "./infusionRate.ts";
import { fail, ok, type Result } from "./result.ts";

/** An infusion as the protocol orders it. */
export type InfusionOrder = {
  readonly unit: RateUnit;
  readonly low: number;
  readonly start: number;
  readonly high: number;
  readonly weight?: WeightScalar | undefined;
};

export type Setting = { readonly rate: InfusionRate; readonly mlPerH: MlPerH };

export type PlannedInfusion = {
  readonly low: Setting;
  readonly start: Setting;
  readonly high: Setting;
  /** Only where the order is for each kilogram. */
  readonly weight?: DoseWeight;
  readonly kind: "computed" | "estimated";
};

/**
 * An infusion for this patient: the span ordered, and what the pump would be set to.
 *
 * @param order  lowest, starting and highest rate in its unit.
 * @param by     `weight`, kg, the one that the order asks for; `concentration` that was read off the label.
 * @returns      each rate with its mL/h, unrounded. `estimated` where the weight used is.
 *
 * Errors: `needs-weight` with the scalar ordered; those of `pumpRate`.
 * Not for: choosing a rate between them.
 * Source: as `pumpRate`; every rate is the order's.
 */
export function planInfusion(
  order: InfusionOrder,
  by: { readonly weight?: DoseWeight | undefined; readonly concentration?: Concentration | undefined },
): Result<PlannedInfusion, NeedsWeight | RateError> {
  const scalar = order.weight ?? "actual";
  const used = isPerKg(order.unit) ? orderedWeight(scalar, by.weight) : undefined;
  if (isPerKg(order.unit) && used === undefined) return fail({ kind: "needs-weight", scalar });
  const set = (value: number): Result<Setting, RateError> => {
    const rate = infusionRate(value, order.unit);
    if (!rate.ok) return rate;
    const pump = pumpRate(rate.value, { kg: used?.kg, concentration: by.concentration });
    return pump.ok ? ok({ rate: rate.value, mlPerH: pump.value }) : pump;
  };
  const low = set(order.low);
  if (!low.ok) return low;
  const start = set(order.start);
  if (!start.ok) return start;
  const high = set(order.high);
  if (!high.ok) return high;
  return ok({
    low: low.value,
    start: start.value,
    high: high.value,
    ...(used !== undefined && { weight: used }),
    kind: used?.kind === "estimated" ? "estimated" : "computed",
  });
}
