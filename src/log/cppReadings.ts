import { checkedMmHg } from "../core/mmHg.ts";
import { cerebralPerfusionPressure } from "../core/pressure.ts";
import type { MmHg } from "../core/quantity.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { CaseState, VitalEntry } from "./caseState.ts";
import { meanReadings, type MeanReading } from "./meanReadings.ts";

/** One perfusion pressure with the two readings it was worked out from. */
export type CppReading = { readonly cppMmHg: MmHg; readonly mean: MeanReading; readonly icp: VitalEntry };

/**
 * Every CPP of the case, newest first: each new mean or ICP makes one with the other's newest value at that time. None
 * without a measured ICP.
 */
export function* cppReadings(state: CaseState, protocol: Protocol): Generator<CppReading, undefined> {
  const meansLeft = meanReadings(state, protocol);
  let mean = meansLeft.next().value;
  let icp = state.vitals.icp;
  while (mean !== undefined && icp !== undefined) {
    const { entry } = icp;
    yield { cppMmHg: cerebralPerfusionPressure(mean.mapMmHg, checkedMmHg(entry.value)), mean, icp: entry };
    const together = mean.readingId === entry.readingId;
    const meanIsNewer = mean.seq > entry.seq;
    if (together || meanIsNewer) mean = meansLeft.next().value;
    if (together || !meanIsNewer) icp = icp.earlier;
  }
}
