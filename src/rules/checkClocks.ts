import { selectAirway } from "../log/attempt.ts";
import type { CaseState } from "../log/caseState.ts";
import type { FindingValue } from "../log/facts.ts";
import { selectPhase } from "../log/phase.ts";
import { selectFinding, selectLatest } from "../log/selectors.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { Clock } from "./clock.ts";
import { watchIntervalS } from "./watchInterval.ts";

type Stamp = { readonly atMs: number; readonly seq: number };

const newer = (a: Stamp | undefined, b: Stamp | undefined): Stamp | undefined =>
  a === undefined || (b !== undefined && b.seq > a.seq) ? b : a;

/** The newest pressure of any kind. */
export const lastPressure = (state: CaseState): Stamp | undefined =>
  newer(selectLatest(state, "sbp"), selectLatest(state, "map"));

/** Whether the tube went in no longer ago than the protocol has the pressure taken often. */
function isSoonAfterTube(state: CaseState, { timers }: Protocol, nowMs: number): boolean {
  const { tube } = selectAirway(state);
  return tube !== undefined && nowMs - tube.atMs < timers.afterTube.forS.value * 1000;
}

/** How often the pressure is taken now, s. In watch mode it is one of the set, whose interval moves: this is the usual one. */
export function pressureEveryS(state: CaseState, protocol: Protocol, nowMs: number): number {
  const { pressureEveryS: every, afterTube } = protocol.timers;
  const phase = selectPhase(state);
  if (isSoonAfterTube(state, protocol, nowMs)) return afterTube.pressureEveryS.value;
  if (phase === "induce" || phase === "intubate") return every.induction.value;
  return every.usual.value;
}

/** When the next pressure is due. Around induction also where none was called yet. */
export function pressureClock(state: CaseState, protocol: Protocol, nowMs: number): Clock | undefined {
  const phase = selectPhase(state);
  const isInduction = phase === "induce" || phase === "intubate";
  const since = lastPressure(state) ?? (isInduction ? state.care.phases : undefined);
  // In watch mode the pressure is one of the set, which has a clock of its own.
  const isOfSet = phase === "watch" && !isSoonAfterTube(state, protocol, nowMs);
  if (since === undefined || isOfSet) return undefined;
  const everyS = pressureEveryS(state, protocol, nowMs);
  return { id: "pressureDue", startedAtMs: since.atMs, endsAtMs: since.atMs + everyS * 1000 };
}

const NEURO_CODES = ["gcsEye", "gcsVerbal", "gcsMotor", "pupilLeft", "pupilRight"] as const;

const lastNeuro = (state: CaseState): Stamp | undefined =>
  NEURO_CODES.reduce<Stamp | undefined>((last, code: FindingValue["code"]) => {
    const found = selectFinding(state, code) ?? selectLatest(state, code);
    return newer(last, found);
  }, undefined);

/** When pupils and score are to be looked at again; from the last time that any of them was. */
export function neuroClock(state: CaseState, { timers }: Protocol): Clock | undefined {
  const last = lastNeuro(state);
  if (last === undefined) return undefined;
  return { id: "neuroDue", startedAtMs: last.atMs, endsAtMs: last.atMs + timers.neuroCheckEveryS.value * 1000 };
}

/** When the next whole set is due: by its oldest value. Not before there was a whole one. */
export function fullSetClock(state: CaseState, protocol: Protocol): Clock | undefined {
  const codes = ["hr", "spo2", ...(selectAirway(state).tube === undefined ? [] : (["etco2"] as const))] as const;
  const times = [lastPressure(state), ...codes.map((code) => selectLatest(state, code))].map((at) => at?.atMs);
  if (times.includes(undefined)) return undefined;
  const oldestMs = Math.min(...times.flatMap((atMs) => (atMs === undefined ? [] : [atMs])));
  const everyS = selectPhase(state) === "watch" ? watchIntervalS(state, protocol) : protocol.timers.fullSetEveryS.value;
  return { id: "fullSetDue", startedAtMs: oldestMs, endsAtMs: oldestMs + everyS * 1000 };
}
