import { mlPerH, type MlPerH } from "./infusionRate.ts";
import type { Minutes, Ml, QuantityError } from "./quantity.ts";
import { fail, type Result } from "./result.ts";

const MIN_PER_H = 60;

/**
 * The rate that gives a volume in a time.
 *
 * @param volumeMl mL to give.
 * @param minutes  to give it in.
 * @returns        volume × 60 / minutes, mL/h, unrounded.
 *
 * Errors: `no-time` for 0 minutes; `out-of-range` where no pump runs like that.
 * Source: arithmetic.
 */
export function rateOver(volumeMl: Ml, minutes: Minutes): Result<MlPerH, QuantityError | { readonly kind: "no-time" }> {
  if (minutes === 0) return fail({ kind: "no-time" });
  return mlPerH((volumeMl * MIN_PER_H) / minutes);
}

/**
 * How long a bag or a syringe lasts.
 *
 * @param remainingMl mL left.
 * @param runningMlPerH mL/h; a rate is never 0.
 * @returns           remaining × 60 / rate, minutes, unrounded.
 *
 * Not for: the dead space of a line, which empties last.
 * Source: arithmetic.
 */
export const timeToEmpty = (remainingMl: Ml, runningMlPerH: MlPerH): Minutes =>
  ((remainingMl * MIN_PER_H) / runningMlPerH) as Minutes;

/** A stretch of time in which the pump ran at one rate. A stop is no stretch. */
export type Segment = { readonly mlPerH: MlPerH; readonly minutes: Minutes };

/**
 * What has run in so far.
 *
 * @param segments one for each rate that the pump was set to; the last may still be running.
 * @returns        Σ rate × minutes / 60, mL, unrounded; 0 for none.
 *
 * Not for: boluses from the pump, which are doses of their own.
 * Source: arithmetic.
 */
export const infusedVolume = (segments: readonly Segment[]): Ml =>
  segments.reduce((sum, segment) => sum + (segment.mlPerH * segment.minutes) / MIN_PER_H, 0) as Ml;
