import { lowPressureDose } from "../../core/lowPressureDose.ts";
import { checkedMmHg } from "../../core/mmHg.ts";
import type { MmHg } from "../../core/quantity.ts";
import type { PressureReading } from "../../core/lowPressure.ts";
import type { CaseState, History } from "../../log/caseState.ts";
import { linksOf } from "../../log/chains.ts";
import { cppReadings } from "../../log/cppReadings.ts";
import type { Low } from "../../log/handover.ts";
import { meanReadings } from "../../log/meanReadings.ts";
import { selectTargets } from "../../log/targets.ts";
import type { Protocol } from "../../protocol/protocol.ts";

type Stamped = { readonly mmHg: MmHg; readonly atMs: number; readonly seq: number };

const recorded = (history: History | undefined): readonly Stamped[] =>
  [...linksOf(history)].map(({ entry: { value, ...entry } }) => ({ ...entry, mmHg: checkedMmHg(value) }));

const means = (state: CaseState, protocol: Protocol): readonly Stamped[] =>
  [...meanReadings(state, protocol)].map(({ mapMmHg, ...mean }) => ({ ...mean, mmHg: mapMmHg }));

/** As old as the newer of the two that it was worked out from. */
const perfusions = (state: CaseState, protocol: Protocol): readonly Stamped[] =>
  [...cppReadings(state, protocol)].map(({ cppMmHg, mean, icp }) => {
    const { atMs, seq } = mean.seq > icp.seq ? mean : icp;
    return { mmHg: cppMmHg, atMs, seq };
  });

const MS_PER_MIN = 60_000;

function lowOf(
  code: Low["code"],
  readings: readonly Stamped[],
  target: number,
  unknownAfterMs: number,
  nowMs: number,
): readonly Low[] {
  const targetMmHg = checkedMmHg(target);
  // A set-back clock or a value put right later may stand out of order: time is what counts here.
  const series: readonly PressureReading[] = readings.toSorted((a, b) => a.atMs - b.atMs || a.seq - b.seq);
  const totals = lowPressureDose(series, targetMmHg, unknownAfterMs);
  if (!totals.ok || totals.value.lowest === undefined || totals.value.last === undefined) return [];
  const { lowest, last, belowMin, anyBelow, unknownMin } = totals.value;
  const sinceMs = nowMs - last.atMs;
  // A pressure that was last under the target is so still, for all that is known.
  const goesOn = last.mmHg < targetMmHg && sinceMs >= MS_PER_MIN;
  const isLeast = unknownMin > 0 || sinceMs > unknownAfterMs || goesOn;
  return [
    { code, lowestMmHg: lowest.mmHg, atMs: lowest.atMs, targetMmHg, underMin: belowMin, anyUnder: anyBelow, isLeast },
  ];
}

/**
 * Lowest MAP, systolic and, where ICP was measured, CPP, each with its minutes under the target that holds now: what is
 * handed over first, since it is what is lost most often (Carter 2009, doi:10.1080/10903120802706260: hypotension before
 * hospital was received 10 of 28 times). MAP, systolic, CPP, those that are known.
 *
 * @param nowMs Unix ms.
 *
 * Not for: the targets as they were earlier in the case: the minutes are told with the number of the target where there is
 * time for it.
 */
export function selectLows(state: CaseState, protocol: Protocol, nowMs: number): readonly Low[] {
  const targets = selectTargets(state, protocol);
  const unknownMs = protocol.lowPressure.unknownAfterS.value * 1000;
  return [
    ...lowOf("map", means(state, protocol), targets.mapMmHg.target.value, unknownMs, nowMs),
    ...lowOf("sbp", recorded(state.vitals.sbp), targets.sbpMmHg.target.value, unknownMs, nowMs),
    ...lowOf("cpp", perfusions(state, protocol), targets.cppMmHg.target.value, unknownMs, nowMs),
  ];
}
