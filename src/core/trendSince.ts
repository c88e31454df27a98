import type { Percent, Quantity } from "./quantity.ts";
import type { Reading } from "./trend.ts";

/** How far a value fell; negative when it rose. `pct` is left out where the first value leaves nothing to divide by. */
export type Drop<U extends string> = { readonly by: Quantity<U>; readonly pct?: Percent };

/**
 * How far a value has fallen since a first value, such as the last one before induction.
 *
 * @param first the first value.
 * @param now   the value now, in the same unit.
 * @returns     first − now in their unit, and in per cent of the first, both unrounded; negative after a rise. No per
 *              cent when the first value is not above 0.
 *
 * Errors: none.
 * Not for: judging the fall against a limit in per cent; dividing may miss the limit by a hair, `hasChangedByPct` does not.
 * Source: arithmetic: first − now; 100 × (first − now) / first.
 */
export function dropSince<U extends string>(first: Quantity<U>, now: Quantity<U>): Drop<U> {
  const by = first - now;
  return (first > 0 ? { by, pct: (100 * by) / first } : { by }) as Drop<U>;
}

/**
 * Whether a value has moved by at least so many per cent of its first value, in one direction.
 *
 * @param change    which way counts.
 * @param first     the first value.
 * @param now       the value now, in the same unit.
 * @param atLeastPct the limit, %, itself included.
 * @returns         false when it has not moved that way at all, and when the first value is not above 0.
 *
 * Errors: none.
 * Not for: a first value of which a percentage means nothing, such as a temperature in °C.
 * Source: arithmetic; multiplied out, so that whole numbers are compared exactly.
 */
export function hasChangedByPct<U extends string>(
  change: "rise" | "fall",
  first: Quantity<U>,
  now: Quantity<U>,
  atLeastPct: Percent,
): boolean {
  const by = change === "rise" ? now - first : first - now;
  return first > 0 && by > 0 && 100 * by >= atLeastPct * first;
}

/**
 * The lowest reading since a moment, such as the induction.
 *
 * @param readings in any order; each with its time, Unix ms.
 * @param sinceMs  the moment, Unix ms. A reading at that very moment counts.
 * @returns        the lowest reading, of equals the earliest; undefined when there is none.
 *
 * Errors: none.
 * Not for: what happened between the readings.
 * Source: definition.
 */
export function lowestSince<U extends string>(
  readings: readonly Reading<U>[],
  sinceMs: number,
): Reading<U> | undefined {
  const isLower = (a: Reading<U>, b: Reading<U>): boolean =>
    a.value < b.value || (a.value === b.value && a.atMs < b.atMs);
  return readings
    .filter(({ atMs }) => atMs >= sinceMs)
    .reduce<Reading<U> | undefined>((low, r) => (low === undefined || isLower(r, low) ? r : low), undefined);
}
