import type { MeanLevel } from "../core/levelledCpp.ts";
import { meanDisagreement } from "../core/meanPressure.ts";
import { checkedMmHg } from "../core/mmHg.ts";
import type { MmHg } from "../core/quantity.ts";
import type { VitalCode } from "../core/vitals.ts";
import { isWorse } from "../protocol/priority.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { AlertState, CaseState, FindingEntry, VitalEntry } from "./caseState.ts";
import type { FindingValue, Level } from "./facts.ts";
import { meanReadings, type MeanReading } from "./meanReadings.ts";

/** The newest value of a vital that was not struck. */
export const selectLatest = (state: CaseState, code: VitalCode): VitalEntry | undefined => state.vitals[code]?.entry;

/** The newest finding without a number, unless a number was recorded after it. */
export function selectFinding(state: CaseState, code: FindingValue["code"]): FindingEntry | undefined {
  const finding = state.findings[code];
  const value = selectLatest(state, code);
  return finding !== undefined && value !== undefined && value.seq > finding.seq ? undefined : finding;
}

export type CurrentMap = {
  readonly mapMmHg: MmHg;
  readonly kind: "measured" | "computed";
  readonly atMs: number;
  readonly level: MeanLevel;
  /** Set when the same reading's systolic and diastolic give a mean this much higher or lower than the measured one. */
  readonly disagreesByMmHg?: number;
};

/** A newer systolic said without a mean can show that the pressure has moved on from this mean. */
function isOvertaken(state: CaseState, protocol: Protocol, mean: MeanReading): boolean {
  const sbp = selectLatest(state, "sbp");
  if (sbp === undefined || sbp.seq <= mean.seq || sbp.value === mean.sbpMmHg) return false;
  const moved = mean.sbpMmHg !== undefined && Math.abs(sbp.value - mean.sbpMmHg) > protocol.pressures.apartMmHg.value;
  return moved || mean.mapMmHg >= sbp.value;
}

function disagreement({ pressures }: Protocol, mean: MeanReading): { disagreesByMmHg?: number } {
  if (mean.computedMmHg === undefined) return {};
  const limitMmHg = checkedMmHg(pressures.apartMmHg.value);
  const { byMmHg, exceeds } = meanDisagreement(mean.mapMmHg, mean.computedMmHg, limitMmHg);
  return exceeds ? { disagreesByMmHg: byMmHg } : {};
}

/** Where the mean was zeroed: as said; on a cuff, the arm; else where the protocol takes a line to be. */
function meanLevel({ pressures }: Protocol, { level, method }: MeanReading): MeanLevel {
  if (level !== undefined) return level;
  return method === "cuff" ? "cuff" : pressures.transducerLevel.value;
}

/**
 * The mean pressure that counts now: the newest reading, and in one reading the measured mean rather than the one-third
 * rule. `undefined` when there is none, or when a newer systolic alone contradicts it.
 */
export function selectMap(state: CaseState, protocol: Protocol): CurrentMap | undefined {
  for (const mean of meanReadings(state, protocol)) {
    if (isOvertaken(state, protocol, mean)) return undefined;
    const { mapMmHg, kind, atMs } = mean;
    return { mapMmHg, kind, atMs, level: meanLevel(protocol, mean), ...disagreement(protocol, mean) };
  }
  return undefined;
}

/** The newest ICP that was measured and said. */
export function selectIcp(state: CaseState): { icpMmHg: MmHg; atMs: number; level?: Level } | undefined {
  const icp = selectLatest(state, "icp");
  if (icp === undefined) return undefined;
  return {
    icpMmHg: checkedMmHg(icp.value),
    atMs: icp.atMs,
    ...(icp.level === undefined ? {} : { level: icp.level }),
  };
}

/** Alerts that stand, the most pressing first, then the oldest. */
export function selectStandingAlerts(state: CaseState): readonly AlertState[] {
  return Object.values(state.alerts).sort((a, b) => {
    if (a.priority !== b.priority) return isWorse(a.priority, b.priority) ? -1 : 1;
    return a.raisedAtSeq - b.raisedAtSeq;
  });
}
