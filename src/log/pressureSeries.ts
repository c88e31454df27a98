import type { PressureReading } from "../core/lowPressure.ts";
import { checkedMmHg } from "../core/mmHg.ts";
import { cerebralPerfusionPressure } from "../core/pressure.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { CaseState } from "./caseState.ts";
import { linksOf } from "./chains.ts";
import { meanReadings } from "./meanReadings.ts";

type Series = readonly PressureReading[];

/** A mean that was completed late is as old as its older half, so the order of saying is not always that of the times. */
const inOrder = (series: readonly PressureReading[]): Series => series.toSorted((a, b) => a.atMs - b.atMs);

/** Every systolic that stands, oldest first. */
export const selectSystolics = ({ vitals }: CaseState): Series =>
  inOrder(
    [...linksOf(vitals.sbp)].toReversed().map(({ entry }) => ({ atMs: entry.atMs, mmHg: checkedMmHg(entry.value) })),
  );

/** Every mean that stands, measured or worked out, oldest first. */
export const selectMeans = (state: CaseState, protocol: Protocol): Series =>
  inOrder([...meanReadings(state, protocol)].toReversed().map(({ atMs, mapMmHg }) => ({ atMs, mmHg: mapMmHg })));

/**
 * Every perfusion pressure, oldest first: each new mean and each new ICP makes one with the newest of the other, at the time
 * of the newer. Only from a measured ICP.
 *
 * Not for: two readings further apart than the protocol joins; they do not tell of one moment and make none.
 */
export function selectPerfusionPressures(state: CaseState, protocol: Protocol): Series {
  const withinMs = protocol.lowPressure.unknownAfterS.value * 1000;
  const icps = [...linksOf(state.vitals.icp)].toReversed().map(({ entry }) => entry);
  const readings = [
    ...[...meanReadings(state, protocol)].map(({ seq, atMs, readingId, mapMmHg }) => ({
      seq,
      atMs,
      readingId,
      mapMmHg,
    })),
    ...icps.map(({ seq, atMs, readingId, value }) => ({ seq, atMs, readingId, icpMmHg: checkedMmHg(value) })),
  ].toSorted((a, b) => a.seq - b.seq);
  type Part = (typeof readings)[number];
  const made: PressureReading[] = [];
  let [mean, icp, madeOf]: [Part | undefined, Part | undefined, string | undefined] = [undefined, undefined, undefined];
  for (const part of readings) {
    if ("mapMmHg" in part) mean = part;
    else icp = part;
    if (mean === undefined || icp === undefined || !("mapMmHg" in mean) || !("icpMmHg" in icp)) continue;
    if (Math.abs(mean.atMs - icp.atMs) > withinMs) continue;
    const reading = {
      atMs: Math.max(mean.atMs, icp.atMs),
      mmHg: cerebralPerfusionPressure(mean.mapMmHg, icp.icpMmHg),
    };
    // Mean and ICP of one breath make one, with both: not a first one with the ICP of before.
    if (madeOf === part.readingId) made.pop();
    made.push(reading);
    madeOf = part.readingId;
  }
  return inOrder(made);
}
