import type { PressureReading } from "../core/lowPressure.ts";
import { lowPressureDose } from "../core/lowPressureDose.ts";
import { checkedMmHg } from "../core/mmHg.ts";
import type { CurrentTargets } from "./targets.ts";
import type { TargetSpan } from "./targetSpans.ts";

/** How deep and how long a pressure was under its target, whatever the target was at the time. */
export type BelowTarget = {
  readonly doseMmHgMin: number;
  readonly belowMin: number;
  /** Time between readings near enough to each other, in which a target was known. */
  readonly knownMin: number;
  /** Time between readings that was not judged: in gaps, or under a protocol whose numbers are not at hand. */
  readonly unknownMin: number;
  readonly readings: number;
  readonly readingsBelow: number;
  readonly lowest: PressureReading | undefined;
  /** The last reading was below: for all that is known it still is, and what was summed is the least of it. */
  readonly endsBelow: boolean;
};

const MS_PER_MIN = 60_000;

/** On the straight line between two readings. */
const between = (a: PressureReading, b: PressureReading, atMs: number): PressureReading => ({
  atMs,
  mmHg: checkedMmHg(a.mmHg + ((b.mmHg - a.mmHg) * (atMs - a.atMs)) / (b.atMs - a.atMs)),
});

/** The readings of one span, with those that the line has at its two ends. A line over a gap is none. */
function within(series: readonly PressureReading[], fromMs: number, toMs: number, unknownAfterMs: number) {
  const inside: PressureReading[] = [];
  series.forEach((reading, i) => {
    const before = series[i - 1];
    const crosses = (atMs: number): boolean =>
      before !== undefined && before.atMs < atMs && atMs < reading.atMs && reading.atMs - before.atMs <= unknownAfterMs;
    if (before !== undefined && crosses(fromMs)) inside.push(between(before, reading, fromMs));
    if (before !== undefined && crosses(toMs)) inside.push(between(before, reading, toMs));
    // One said at the very change ends the old line and begins the new one.
    if (reading.atMs >= fromMs && reading.atMs <= toMs) inside.push(reading);
  });
  return inside;
}

/**
 * Depth and length of low pressure against a target that may change.
 *
 * @param series         pressures, mmHg, oldest first.
 * @param spans          which targets held when, oldest first and without a break.
 * @param floorOf        the floor in question, mmHg.
 * @param unknownAfterMs readings further apart than this leave the time between them unknown, ms.
 * @returns              dose in mmHg·min and times in minutes, unrounded; where `unknownMin` is not 0, or it
 *                       ends below, least values.
 *
 * Errors: none for readings in order.
 * Not for: time before the first reading and after the last.
 * Source: see `lowPressureDose`; where the target changes between two readings the line between them is split, common
 * practice, no source.
 */
export function belowTarget(
  series: readonly PressureReading[],
  spans: readonly TargetSpan[],
  floorOf: (targets: CurrentTargets) => number,
  unknownAfterMs: number,
): BelowTarget {
  let [doseMmHgMin, belowMin, knownMin, readingsBelow] = [0, 0, 0, 0];
  for (const { fromMs, toMs = Infinity, targets } of spans) {
    if (targets === undefined) continue;
    const floor = checkedMmHg(floorOf(targets));
    const sum = lowPressureDose(within(series, fromMs, toMs, unknownAfterMs), floor, unknownAfterMs);
    if (!sum.ok) throw new Error(`pressures are ${sum.error.kind}`);
    doseMmHgMin += sum.value.doseMmHgMin;
    belowMin += sum.value.belowMin;
    knownMin += sum.value.knownMin;
    readingsBelow += series.filter(({ atMs, mmHg }) => atMs >= fromMs && atMs < toMs && mmHg < floor).length;
  }
  const [first, last] = [series[0], series.at(-1)];
  const lastTargets = spans.findLast(({ fromMs }) => last !== undefined && fromMs <= last.atMs)?.targets;
  const spanMin = first === undefined || last === undefined ? 0 : (last.atMs - first.atMs) / MS_PER_MIN;
  return {
    doseMmHgMin,
    belowMin,
    knownMin,
    unknownMin: Math.max(0, spanMin - knownMin),
    readings: series.length,
    readingsBelow,
    lowest: series.reduce<PressureReading | undefined>(
      (low, reading) => (low === undefined || reading.mmHg < low.mmHg ? reading : low),
      undefined,
    ),
    endsBelow: last !== undefined && lastTargets !== undefined && last.mmHg < floorOf(lastTargets),
  };
}
