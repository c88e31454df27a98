import { selectAirway } from "../../log/attempt.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { Phase } from "../../log/careFacts.ts";
import { selectPhase } from "../../log/phase.ts";
import { selectLatest } from "../../log/selectors.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { fullSetClock, lastPressure, neuroClock, pressureClock } from "../checkClocks.ts";
import { isOver, runFor } from "../clock.ts";
import { paralysisAt } from "../paralysis.ts";
import type { Prompt } from "./prompt.ts";

/** While the patient is first looked at, and while hands are at the airway, nobody is asked for whole sets. */
const CALM: readonly Phase[] = ["resuscitate", "prepare", "settle", "watch"];
const isCalm = (state: CaseState): boolean => CALM.includes(selectPhase(state));

/** The pressure is due; with more weight around induction. Not while the patient is first looked at, nor once handed over. */
export function pressureDue(state: CaseState, protocol: Protocol, nowMs: number): readonly Prompt[] {
  const phase = selectPhase(state);
  const clock = phase === "assess" || phase === "handOver" ? undefined : pressureClock(state, protocol, nowMs);
  if (clock === undefined || !isOver(clock, nowMs)) return [];
  const priority = phase === "induce" || phase === "intubate" ? "medium" : "low";
  const ageMs = lastPressure(state) === undefined ? undefined : runFor(clock, nowMs);
  return [{ promptId: "pressureDue", ageMs, key: String(clock.startedAtMs), priority, repeats: true, routine: true }];
}

export function neuroDue(state: CaseState, protocol: Protocol, nowMs: number): readonly Prompt[] {
  const clock = isCalm(state) ? neuroClock(state, protocol) : undefined;
  if (clock === undefined || !isOver(clock, nowMs)) return [];
  const pupilsOnly = paralysisAt(state, protocol, { atMs: nowMs }) !== undefined;
  return [
    { promptId: "neuroDue", pupilsOnly, key: String(clock.startedAtMs), priority: "low", repeats: true, routine: true },
  ];
}

export function fullSetDue(state: CaseState, protocol: Protocol, nowMs: number): readonly Prompt[] {
  const clock = isCalm(state) ? fullSetClock(state, protocol) : undefined;
  if (clock === undefined || !isOver(clock, nowMs)) return [];
  return [{ promptId: "fullSetDue", key: String(clock.startedAtMs), priority: "low", repeats: true, routine: true }];
}

/** Where no set is asked for, a number on which others rest is still called stale; once, since its age is on the screen. */
export function stale(state: CaseState, protocol: Protocol, nowMs: number): readonly Prompt[] {
  const phase = selectPhase(state);
  if (isCalm(state) || phase === "handOver") return [];
  const afterMs = protocol.timers.staleAfterS.value * 1000;
  const values = [
    // Around induction the pressure has a clock of its own, and a shorter one.
    { what: "pressure", at: phase === "assess" ? lastPressure(state) : undefined },
    { what: "spo2", at: selectLatest(state, "spo2") },
  ] as const;
  for (const { what, at } of values) {
    if (at === undefined || nowMs - at.atMs < afterMs) continue;
    const ageMs = nowMs - at.atMs;
    return [
      { promptId: "stale", what, ageMs, key: `${what}:${at.seq}`, priority: "low", repeats: false, routine: true },
    ];
  }
  return [];
}

/** The patient has settled for as long as the pressure is taken often after the tube: is it time to watch? Asked once. */
export function watchPhase(state: CaseState, { timers }: Protocol, nowMs: number): readonly Prompt[] {
  const { tube } = selectAirway(state);
  const forMs = timers.afterTube.forS.value * 1000;
  if (selectPhase(state) !== "settle" || tube === undefined || nowMs - tube.atMs < forMs) return [];
  return [{ promptId: "watchPhase", forMs, key: String(tube.seq), priority: "low", repeats: false }];
}
