import type { Minutes, Quantity } from "./quantity.ts";

/** One value at one moment, Unix ms. */
export type Reading<U extends string> = { readonly atMs: number; readonly value: Quantity<U> };
export type PerMinute<U extends string> = Quantity<`${U}/min`>;

const MS_PER_MIN = 60_000;

const meanOf = (numbers: readonly number[]): number => numbers.reduce((sum, n) => sum + n, 0) / numbers.length;

/**
 * How fast a value is changing: the slope of the least-squares line through the newest readings.
 *
 * @param readings in any order; each with its time, Unix ms.
 * @param windowMs how far back from the newest reading the line reaches, ms. A reading exactly this old belongs to it.
 * @returns        the unit of the readings per minute, unrounded, negative when falling; undefined when the window does
 *                 not hold two different times.
 *
 * Errors: none.
 * Not for: knowing that the newest reading is recent. Not for a slope through a change of treatment.
 * Source: least squares, a standard form: Σ(t − t̄)(y − ȳ) / Σ(t − t̄)². Any constant may stand for ȳ; it cancels out.
 */
export function slopePerMin<U extends string>(
  readings: readonly Reading<U>[],
  windowMs: number,
): PerMinute<U> | undefined {
  const newestMs = readings.reduce((newest, { atMs }) => Math.max(newest, atMs), -Infinity);
  const inWindow = readings.filter(({ atMs }) => newestMs - atMs <= windowMs);
  // Counted back from the newest: Unix times are so large that their squares would swallow the seconds.
  const minutes = inWindow.map(({ atMs }) => (atMs - newestMs) / MS_PER_MIN);
  // Likewise from one of the values, so that a value that never moved gives exactly 0.
  const values = inWindow.map(({ value }, _i, [first]) => value - (first?.value ?? value));
  const meanMinute = meanOf(minutes);
  const fromMean = minutes.map((minute) => minute - meanMinute);
  const together = values.reduce((sum, value, i) => sum + (fromMean[i] ?? 0) * value, 0);
  const apart = fromMean.reduce((sum, minute) => sum + minute * minute, 0);
  const slope = together / apart;
  // No two different times: 0 / 0.
  return Number.isFinite(slope) ? (slope as PerMinute<U>) : undefined;
}

/**
 * How long until a falling value is down at a level, if it goes on falling as it does.
 *
 * @param value  now, in the unit of the level.
 * @param level  what it is falling to, such as a floor.
 * @param perMin how fast it is changing, per minute; see `slopePerMin`.
 * @returns      minutes, unrounded, however many; 0 when it is there already; undefined when it is above the level and not
 *               falling.
 *
 * Errors: none.
 * Not for: promising that time; it is arithmetic on a straight line, and a fall after induction is not straight.
 * Source: arithmetic: (value − level) / fall per minute.
 */
export function minutesUntil<U extends string>(
  value: Quantity<U>,
  level: Quantity<U>,
  perMin: PerMinute<U>,
): Minutes | undefined {
  const minutes = value <= level ? 0 : (level - value) / perMin;
  // A slope of 0 would take for ever, a rise would take less than no time.
  return minutes >= 0 && Number.isFinite(minutes) ? (minutes as Minutes) : undefined;
}
