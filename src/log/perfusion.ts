import { checkedMmHg } from "../core/mmHg.ts";
import { cppRange } from "../core/cppRange.ts";
import { levelledCpp, type LevelledCpp } from "../core/levelledCpp.ts";
import { deficit, icpAtWhichCppMeets, perfusionMargin } from "../core/pressure.ts";
import type { MmHg } from "../core/quantity.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { CaseState } from "./caseState.ts";
import type { Level, Method } from "./facts.ts";
import { pressurePairs } from "./meanReadings.ts";
import { selectIcp, selectLatest, selectMap, type CurrentMap } from "./selectors.ts";
import { selectTargets } from "./targets.ts";

export type CuffOrLine = {
  /** mmHg. */
  readonly sbp: MmHg;
  /** mmHg. Missing when the newest systolic was said alone. */
  readonly dbp?: MmHg;
  readonly method?: Method;
  readonly atMs: number;
};

export type PerfusionMap = CurrentMap & {
  readonly targetMmHg: MmHg;
  readonly deficitMmHg: number;
  /** How far the mean may fall before it or a measured CPP leaves its target. */
  readonly marginMmHg: number;
};

export type Cpp =
  | (LevelledCpp & {
      readonly kind: "measured";
      readonly targetMmHg: MmHg;
      readonly deficitMmHg: number;
    })
  /** No measured ICP: bounds only, never one number. */
  | {
      readonly kind: "bounded";
      /** CPP is under target if ICP is over this; at or below zero, it is under target whatever the ICP. */
      readonly underTargetIfIcpOverMmHg: MmHg;
      /** CPP at the high and at the low end of the assumed ICP. */
      readonly lowMmHg: MmHg;
      readonly highMmHg: MmHg;
      readonly assumedIcp: { readonly low: MmHg; readonly high: MmHg };
      readonly targetMmHg: MmHg;
    }
  | { readonly kind: "none" };

export type Perfusion = {
  readonly pressure?: CuffOrLine;
  readonly map?: PerfusionMap;
  readonly icp?: { readonly icpMmHg: MmHg; readonly atMs: number; readonly level?: Level };
  readonly cpp: Cpp;
  /** Age of the oldest of these inputs. Missing when there is none. */
  readonly oldestInputAgeMs?: number;
  readonly stale: boolean;
};

function newestPressure(state: CaseState, protocol: Protocol): CuffOrLine | undefined {
  const sbp = selectLatest(state, "sbp");
  if (sbp === undefined) return undefined;
  const pair = pressurePairs(state, protocol).next().value;
  const dbp = pair !== undefined && pair.sbp.id === sbp.id ? pair.dbp : undefined;
  return {
    sbp: checkedMmHg(sbp.value),
    ...(dbp === undefined ? {} : { dbp: checkedMmHg(dbp.value) }),
    ...(sbp.method === undefined ? {} : { method: sbp.method }),
    atMs: sbp.atMs,
  };
}

function cppOf(protocol: Protocol, targetMmHg: MmHg, map: CurrentMap | undefined, icpMmHg: MmHg | undefined): Cpp {
  if (map === undefined) return { kind: "none" };
  if (icpMmHg !== undefined) {
    const cpp = levelledCpp(map, icpMmHg);
    return { kind: "measured", ...cpp, targetMmHg, deficitMmHg: deficit(cpp.cppMmHg, targetMmHg) };
  }
  const { low, high } = protocol.assumedIcpMmHg.value;
  const assumedIcp = { low: checkedMmHg(low), high: checkedMmHg(high) };
  return {
    kind: "bounded",
    underTargetIfIcpOverMmHg: icpAtWhichCppMeets(map.mapMmHg, targetMmHg),
    ...cppRange(map.mapMmHg, assumedIcp),
    assumedIcp,
    targetMmHg,
  };
}

function againstTarget(targetMmHg: MmHg, map: CurrentMap, cpp: Cpp): PerfusionMap {
  return {
    ...map,
    targetMmHg,
    deficitMmHg: deficit(map.mapMmHg, targetMmHg),
    marginMmHg: perfusionMargin(map.mapMmHg, targetMmHg, cpp.kind === "measured" ? cpp : undefined),
  };
}

/** Pressure, mean, ICP and perfusion against target, as the screen shows them and the status sentence says them. */
export function selectPerfusion(state: CaseState, protocol: Protocol, nowMs: number): Perfusion {
  const pressure = newestPressure(state, protocol);
  const map = selectMap(state, protocol);
  const icp = selectIcp(state);
  const targets = selectTargets(state, protocol);
  const cpp = cppOf(protocol, checkedMmHg(targets.cppMmHg.target.value), map, icp?.icpMmHg);
  const times = [pressure, map, icp].flatMap((input) => (input === undefined ? [] : [input.atMs]));
  const oldestMs = Math.max(0, nowMs - Math.min(...times));
  return {
    ...(pressure === undefined ? {} : { pressure }),
    ...(map === undefined ? {} : { map: againstTarget(checkedMmHg(targets.mapMmHg.target.value), map, cpp) }),
    ...(icp === undefined ? {} : { icp }),
    cpp,
    ...(times.length === 0 ? {} : { oldestInputAgeMs: oldestMs }),
    stale: times.length > 0 && oldestMs > protocol.timers.staleAfterS.value * 1000,
  };
}
