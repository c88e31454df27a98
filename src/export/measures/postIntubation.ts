import { selectLatest } from "../../log/selectors.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { DEFINITIONS } from "./definitions.ts";
import { within } from "./lowest.ts";
import { known, unknown, type Measured } from "./measured.ts";
import { readingsOf, type Reading } from "./readings.ts";
import { selectFirstProvedTube } from "./tubeSpans.ts";

/** Whether a low systolic was recorded after the tube. `watchedMin` of `ofMin` minutes lay between readings near enough. */
export type PostIntubation = { readonly low: boolean; readonly watchedMin: number; readonly ofMin: number };

const MS_PER_MIN = 60_000;

/** The longest run of low readings one after the other, ms. */
function longestLowMs(readings: readonly Reading[], belowMmHg: number): number {
  let sinceMs: number | undefined;
  let longestMs = 0;
  for (const { atMs, value } of readings) {
    sinceMs = value < belowMmHg ? (sinceMs ?? atMs) : undefined;
    if (sinceMs !== undefined) longestMs = Math.max(longestMs, atMs - sinceMs);
  }
  return longestMs;
}

/** How much of a stretch lies between two readings that are no further apart than `apartMs`, ms. */
function watchedMs(readings: readonly Reading[], fromMs: number, toMs: number, apartMs: number): number {
  return readings.reduce((sum, { atMs }, i) => {
    const beforeMs = readings[i - 1]?.atMs;
    if (beforeMs === undefined || atMs - beforeMs > apartMs) return sum;
    return sum + Math.max(0, Math.min(atMs, toMs) - Math.max(beforeMs, fromMs));
  }, 0);
}

/**
 * Hypotension after intubation as published: see `DEFINITIONS.postIntubation`. As there, it rests on what was recorded, so
 * "none" is only as good as `watchedMin` is long. Adults alone, and none whose pressure was low for long before.
 */
export function selectPostIntubation(recorded: RecordedCase): Measured<PostIntubation> {
  const { sbpBelowMmHg, withinMin, lowBeforeMin, fromAgeA } = DEFINITIONS.postIntubation.value;
  const { state, protocol } = recorded;
  const tube = selectFirstProvedTube(state);
  if (tube === undefined) return unknown("tube-not-proved");
  const age = selectLatest(state, "age");
  if (age === undefined) return unknown("no-age");
  if (age.value < fromAgeA) return unknown("not-adult");
  const tubeMs = tube.in.atMs;
  const untilMs = tubeMs + withinMin * MS_PER_MIN;
  const readings = readingsOf(recorded, "sbp");
  const before = readings.filter(({ atMs }) => atMs <= tubeMs);
  const after = within(readings, { fromMs: tubeMs, toMs: untilMs }).filter(({ atMs }) => atMs > tubeMs);
  if (before.length === 0) return unknown("no-pressure-before");
  if (longestLowMs(before, sbpBelowMmHg) >= lowBeforeMin * MS_PER_MIN) return unknown("low-before");
  if (after.length === 0) return unknown("not-measured");
  const apartMs = protocol.lowPressure.unknownAfterS.value * 1000;
  const watchedMin = watchedMs(readings, tubeMs, untilMs, apartMs) / MS_PER_MIN;
  return known({ low: after.some(({ value }) => value < sbpBelowMmHg), watchedMin, ofMin: withinMin });
}
