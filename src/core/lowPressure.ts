import type { Minutes, MmHg, Quantity } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";

/** Depth of a low pressure times how long it lasted. */
export type MmHgMin = Quantity<"mmHg.min">;

/** A systolic, mean or perfusion pressure at one moment, Unix ms. A perfusion pressure may be negative. */
export type PressureReading = { readonly atMs: number; readonly mmHg: MmHg };

/** A running sum of one case against one floor. Its size does not grow with the readings. */
export type LowPressure = {
  readonly floorMmHg: MmHg;
  readonly unknownAfterMs: number;
  readonly doseMmHgMs: number;
  readonly belowMs: number;
  readonly knownMs: number;
  readonly unknownMs: number;
  readonly readings: number;
  readonly readingsBelow: number;
  readonly firstBelow?: PressureReading;
  readonly lowest?: PressureReading;
  readonly last?: PressureReading;
};

export type LowPressureError =
  /** The time of the reading is not a number of milliseconds that a calendar knows. */
  | { readonly kind: "not-a-time"; readonly atMs: number }
  /** The reading is older than the one before it. */
  | { readonly kind: "not-in-order"; readonly atMs: number; readonly lastAtMs: number };

export type LowPressureTotals = {
  readonly doseMmHgMin: MmHgMin;
  readonly belowMin: Minutes;
  /** Time between readings that were near enough to each other. `belowMin` is a part of it. */
  readonly knownMin: Minutes;
  /** Time in gaps. It adds nothing to the dose, so the dose is a least value as soon as this is not 0. */
  readonly unknownMin: Minutes;
  readonly readings: number;
  readonly readingsBelow: number;
  /** True from the first low reading on, whatever the dose. */
  readonly anyBelow: boolean;
  readonly firstBelow?: PressureReading;
  /** The lowest of all readings, below the floor or not; the first of equals. */
  readonly lowest?: PressureReading;
  readonly last?: PressureReading;
};

/** The furthest instant that ECMAScript dates can name, on either side of 1970. */
const FURTHEST_MS = 8.64e15;
const MS_PER_MIN = 60_000;

const minutesOf = (ms: number): Minutes => (ms / MS_PER_MIN) as Minutes;
const doseOf = (mmHgMs: number): MmHgMin => (mmHgMs / MS_PER_MIN) as MmHgMin;

/**
 * Begins to sum how deep and how long a pressure is low.
 *
 * @param floorMmHg      the pressure to keep, mmHg. A pressure equal to it is not low.
 * @param unknownAfterMs readings further apart than this leave the time between them unknown, ms. Exactly this far apart
 *                       is still near enough; what is not a number leaves every gap unknown.
 * @returns              a sum without readings; its times are ms, its dose mmHg·ms.
 *
 * Errors: none.
 * Not for: more than one floor; each floor has its own sum.
 * Source: see `addReading`.
 */
export const startLowPressure = (floorMmHg: MmHg, unknownAfterMs: number): LowPressure => ({
  floorMmHg,
  unknownAfterMs,
  doseMmHgMs: 0,
  belowMs: 0,
  knownMs: 0,
  unknownMs: 0,
  readings: 0,
  readingsBelow: 0,
});

/** The time from one reading to the next, with a straight line drawn between them. */
function addInterval(sum: LowPressure, from: PressureReading, to: PressureReading): LowPressure {
  const lengthMs = to.atMs - from.atMs;
  // Asked this way round, a limit that is not a number makes the gap unknown, never known.
  const isKnown = lengthMs <= sum.unknownAfterMs;
  if (!isKnown) return { ...sum, unknownMs: sum.unknownMs + lengthMs };
  const fromDepth = Math.max(0, sum.floorMmHg - from.mmHg);
  const toDepth = Math.max(0, sum.floorMmHg - to.mmHg);
  const depths = fromDepth + toDepth;
  // Where only one end is low, the line meets the floor in the ratio of the two distances; where both are, this is 1.
  const distances = Math.abs(sum.floorMmHg - from.mmHg) + Math.abs(sum.floorMmHg - to.mmHg);
  const belowMs = depths === 0 ? 0 : lengthMs * (depths / distances);
  return {
    ...sum,
    knownMs: sum.knownMs + lengthMs,
    belowMs: sum.belowMs + belowMs,
    doseMmHgMs: sum.doseMmHgMs + (depths / 2) * belowMs,
  };
}

/**
 * Takes the next reading into the sum: the time since the last one is split exactly where the line between the two
 * crosses the floor, and the area under the floor is added. Of two readings at one instant each counts as a reading,
 * no time passes between them, and the line goes on from the one said last.
 *
 * @param sum     the sum so far.
 * @param reading the next pressure, mmHg, at or after the last one, Unix ms.
 * @returns       the new sum, unrounded. The old one is unchanged.
 *
 * Errors: `not-a-time`; `not-in-order` for a reading older than the last. It does not sort: a reading that turns up late,
 * or is struck out, has already changed what came after it, so the caller sums again from the start.
 * Not for: time after the last reading; that is unknown until the next one. Not for a forecast of outcome.
 * Source: Spaite DW et al. Hypotension depth and duration. Ann Emerg Med 2017;70:522-530, for the integral of depth over
 * time; the straight line between readings and the limit on gaps are common practice, no source.
 */
export function addReading(sum: LowPressure, reading: PressureReading): Result<LowPressure, LowPressureError> {
  const { atMs, mmHg } = reading;
  const isTime = Math.abs(atMs) <= FURTHEST_MS;
  if (!isTime) return fail({ kind: "not-a-time", atMs });
  const { last, lowest = reading } = sum;
  if (last !== undefined && atMs < last.atMs) return fail({ kind: "not-in-order", atMs, lastAtMs: last.atMs });
  const summed = last === undefined ? sum : addInterval(sum, last, reading);
  const isBelow = mmHg < sum.floorMmHg;
  return ok({
    ...summed,
    readings: sum.readings + 1,
    readingsBelow: sum.readingsBelow + (isBelow ? 1 : 0),
    ...(isBelow && { firstBelow: sum.firstBelow ?? reading }),
    lowest: mmHg < lowest.mmHg ? reading : lowest,
    last: reading,
  });
}

/**
 * What the sum comes to.
 *
 * @param sum the sum so far.
 * @returns   dose in mmHg·min and times in minutes, unrounded; the readings that stand out.
 *
 * Errors: none.
 * Not for: saying that nothing was low. Dose 0 with `anyBelow` is a low reading without a neighbour; time in
 * `unknownMin` may have been low.
 * Source: see `addReading`.
 */
export function lowPressureTotals(sum: LowPressure): LowPressureTotals {
  const { firstBelow, lowest, last, readings, readingsBelow } = sum;
  return {
    doseMmHgMin: doseOf(sum.doseMmHgMs),
    belowMin: minutesOf(sum.belowMs),
    knownMin: minutesOf(sum.knownMs),
    unknownMin: minutesOf(sum.unknownMs),
    readings,
    readingsBelow,
    anyBelow: readingsBelow > 0,
    ...(firstBelow && { firstBelow }),
    ...(lowest && { lowest }),
    ...(last && { last }),
  };
}
