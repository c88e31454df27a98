import type { CurrentTargets } from "../log/targets.ts";
import type { Priority } from "../protocol/priority.ts";
import type { AlertRule, WatchedCode } from "../protocol/protocol.ts";

/** Values under `below` have this priority. */
export type Band = { readonly below: number; readonly inclusive: boolean; readonly priority: Priority };

/** An alert with the numbers that hold for the patient now. In mmHg, or % for `spo2`. */
export type JudgedRule = Pick<AlertRule, "id" | "code" | "clearBy" | "clearReadings"> & {
  readonly target: number;
  /** Mildest first. */
  readonly bands: readonly Band[];
};

function floorOf(targets: CurrentTargets, code: WatchedCode) {
  const { sbpMmHg, mapMmHg, cppMmHg, spo2Pct } = targets;
  return { sbp: sbpMmHg, map: mapMmHg, cpp: cppMmHg, spo2: spo2Pct }[code];
}

/** The alert with its bands put where this patient's limits are. */
export function ruleFor({ id, code, bands, clearBy, clearReadings }: AlertRule, targets: CurrentTargets): JudgedRule {
  const floor = floorOf(targets, code);
  return {
    id,
    code,
    clearBy,
    clearReadings,
    target: floor.target.value,
    bands: bands.map(({ under, inclusive, priority }) => ({ below: floor[under].value, inclusive, priority })),
  };
}
