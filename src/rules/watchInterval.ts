import type { CaseState, History } from "../log/caseState.ts";
import { meanReadings } from "../log/meanReadings.ts";
import { selectTargets } from "../log/targets.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { DEVICE_ALERTS } from "./alerts/condition.ts";

type Value = { readonly value: number; readonly seq: number };

function* valuesOf(history: History | undefined): Generator<Value> {
  for (let link = history; link !== undefined; link = link.earlier)
    yield { value: link.entry.value, seq: link.entry.seq };
}

function* meansOf(state: CaseState, protocol: Protocol): Generator<Value> {
  for (const { mapMmHg, seq } of meanReadings(state, protocol)) yield { value: mapMmHg, seq };
}

/** How many of the newest values in a row are good, among those called since the watch began; `most` are enough. */
function goodInARow(
  newestFirst: Iterable<Value>,
  isGood: (v: number) => boolean,
  sinceSeq: number,
  most: number,
): number {
  let good = 0;
  for (const { value, seq } of newestFirst) {
    if (seq <= sinceSeq || !isGood(value) || good >= most) break;
    good += 1;
  }
  return good;
}

/** How many sets in a row were good since the watch began: as many as of the value that was called least often. */
function goodSets(state: CaseState, protocol: Protocol, most: number): number {
  const ofDevice: readonly string[] = DEVICE_ALERTS;
  if (Object.keys(state.alerts).some((id) => !ofDevice.includes(id))) return 0;
  const { mapMmHg, sbpMmHg, spo2Pct, etco2MmHg } = selectTargets(state, protocol);
  const since = state.care.phases?.seq ?? -1;
  const count = (values: Iterable<Value>, isGood: (v: number) => boolean): number =>
    goodInARow(values, isGood, since, most);
  const means = count(meansOf(state, protocol), (v) => v >= mapMmHg.target.value);
  const systolics = count(valuesOf(state.vitals.sbp), (v) => v >= sbpMmHg.target.value);
  return Math.min(
    state.vitals.map === undefined && state.vitals.dbp === undefined ? systolics : means,
    count(valuesOf(state.vitals.spo2), (v) => v >= spo2Pct.target.value),
    count(valuesOf(state.vitals.etco2), (v) => v >= etco2MmHg.low && v <= etco2MmHg.high),
  );
}

/**
 * How long until the next set in watch mode, s: the shortest interval, stretched once for each good set in a row up to the
 * longest, and the shortest again as soon as one value is off its target.
 */
export function watchIntervalS(state: CaseState, protocol: Protocol): number {
  const { shortestS, longestS, stretchBy } = protocol.timers.watch;
  const most = Math.ceil(Math.log(longestS.value / shortestS.value) / Math.log(stretchBy.value));
  const stretched = shortestS.value * stretchBy.value ** goodSets(state, protocol, Math.max(0, most));
  return Math.min(longestS.value, stretched);
}
