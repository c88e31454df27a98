import type { Fraction, Kg, Minutes, Ml, MlPerKg, MlPerMin } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";

/** A time out of a model, for teaching. The kind keeps it apart from anything a patient may be held to. */
export type ModelTime = { readonly kind: "model"; readonly minutes: Minutes };

/** Nothing is taken up, so nothing runs out: there is no time to give. */
export type ApnoeaError = { readonly kind: "no-uptake" };

/**
 * Gas left in the lungs at the end of a quiet breath.
 *
 * @param perKg    mL/kg; a parameter of the model.
 * @param weightKg kg.
 * @returns        mL/kg × weight, mL, unrounded.
 *
 * Not for: a pregnant, obese, supine or injured patient, whose lungs hold less by an unknown amount.
 * Source: definition.
 */
export const residualCapacity = (perKg: MlPerKg, weightKg: Kg): Ml => (perKg * weightKg) as Ml;

/**
 * Oxygen in the lungs that apnoea can use up.
 *
 * @param residualMl gas in the lungs, mL.
 * @param start      alveolar oxygen fraction when breathing stops.
 * @param end        alveolar oxygen fraction at which the store counts as used.
 * @returns          FRC × (FAO2 at the start − FAO2 at the end), mL, unrounded; 0 when it starts at the end or below.
 *
 * Not for: the store in blood, which is left out.
 * Source: mass balance, from memory.
 */
export const apnoeaStore = (residualMl: Ml, start: Fraction, end: Fraction): Ml =>
  (residualMl * Math.max(0, start - end)) as Ml;

/**
 * How long a store of oxygen would last: training only, and there only as a warning, never as a promise.
 *
 * @param storeMl        from `apnoeaStore`, mL.
 * @param uptakeMlPerMin oxygen consumption, mL/min.
 * @returns              store / VO2, minutes, unrounded, marked as a model's.
 *
 * Errors: `no-uptake` when the consumption is zero, or too near it for a finite time.
 * Not for: any patient. It assumes lungs free of nitrogen, no shunt and steady consumption; the shocked, the injured, the
 * obese and the badly preoxygenated desaturate far sooner.
 * Source: mass balance, from memory.
 */
export function apnoeaTime(storeMl: Ml, uptakeMlPerMin: MlPerMin): Result<ModelTime, ApnoeaError> {
  const minutes = storeMl / uptakeMlPerMin;
  if (!Number.isFinite(minutes)) return fail({ kind: "no-uptake" });
  return ok({ kind: "model", minutes: minutes as Minutes });
}
