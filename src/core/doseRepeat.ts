const MS_PER_S = 1000;

/** When a dose may be given again, as the protocol orders it. */
export type RepeatOrder = {
  readonly repeatAfterS?: { readonly low: number; readonly high: number } | undefined;
  readonly mostDoses?: number | undefined;
};

export type RepeatState = {
  readonly count: number;
  /** As many as the order allows in all were given. */
  readonly mostReached: boolean;
  /** None before the first dose, where the order names no interval, and where no more may be given. */
  readonly earliestNextAtMs: number | undefined;
};

/**
 * Where a repeated dose stands.
 *
 * @param order     interval, s, and the most doses in all; either may be missing.
 * @param givenAtMs when each was given, Unix ms, in any order.
 * @returns         how many, whether that is the most, and the latest given + the shorter interval, Unix ms.
 *
 * Not for: when the next dose is needed.
 * Source: arithmetic; interval and number are the order's.
 */
export function repeatState(order: RepeatOrder, givenAtMs: readonly number[]): RepeatState {
  const count = givenAtMs.length;
  const mostReached = count >= (order.mostDoses ?? Infinity);
  const latest = givenAtMs.reduce((late, atMs) => Math.max(late, atMs), -Infinity);
  const open = count > 0 && !mostReached && order.repeatAfterS !== undefined;
  const earliestNextAtMs = open ? latest + order.repeatAfterS.low * MS_PER_S : undefined;
  return { count, mostReached, earliestNextAtMs };
}
