import { checkedMmHg } from "../../core/mmHg.ts";
import type { CaseState } from "../../log/caseState.ts";
import { meanReadings } from "../../log/meanReadings.ts";
import { selectMap } from "../../log/selectors.ts";
import { selectTargets } from "../../log/targets.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { isOver } from "../clock.ts";
import { pushDoseClock, sedationClock } from "../drugClocks.ts";
import type { Prompt } from "./prompt.ts";

/** The sedative wears off under a paralytic that acts on. */
export function sedationDue(state: CaseState, protocol: Protocol, nowMs: number): readonly Prompt[] {
  const clock = sedationClock(state, protocol, nowMs);
  if (clock === undefined || !isOver(clock, nowMs)) return [];
  const paralytic = clock.subject ?? "";
  const key = String(clock.startedAtMs);
  return [{ promptId: "sedationDue", paralytic, key, priority: "medium", repeats: true }];
}

/** The mean that was called since then and is under its target; what was called before the dose tells nothing of it. */
function isLowSince(state: CaseState, protocol: Protocol, seq: number): boolean {
  const target = checkedMmHg(selectTargets(state, protocol).mapMmHg.target.value);
  const newest = meanReadings(state, protocol).next().value;
  const map = selectMap(state, protocol);
  return newest !== undefined && newest.seq > seq && map !== undefined && map.mapMmHg < target;
}

/** The push dose may be given again, and the pressure that was called since asks for it. */
export function pushDoseAgain(state: CaseState, protocol: Protocol, nowMs: number): readonly Prompt[] {
  const clock = pushDoseClock(state, protocol);
  if (clock === undefined || !isOver(clock, nowMs) || !isLowSince(state, protocol, clock.seq)) return [];
  const drug = clock.subject ?? "";
  return [{ promptId: "pushDoseAgain", drug, key: String(clock.seq), priority: "low", repeats: true }];
}
