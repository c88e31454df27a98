import type { CaseState } from "../../log/caseState.ts";
import type { Priority } from "../../protocol/priority.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { isStandingBy } from "../standBy.ts";

/** How many more alerts and prompts may be spoken now. */
export function speechRoom({ spokenAtMs }: CaseState, { timers }: Protocol, nowMs: number): number {
  const { most, withinS } = timers.alertCap;
  const sinceMs = nowMs - withinS.value * 1000;
  // Also where the device clock was set back: words that are said later than now were said a moment ago.
  return most.value - spokenAtMs.filter((atMs) => atMs > sinceMs).length;
}

/**
 * Whether there is room for this one. The last places are kept: one for an alert that is new and high, the very last for
 * prompts that nothing else says. A new alert loses little where there is none: the read-back of the value that raised it
 * says what it would.
 */
export function hasRoom(room: number, priority: Priority, isNew: boolean, { timers }: Protocol): boolean {
  const kept = timers.alertCap.keptForNew.value;
  return isNew && priority === "high" ? room >= kept : room > kept;
}

/** Nothing under a high priority is said: somebody asked for quiet. */
export const isQuiet = (state: CaseState, nowMs: number): boolean =>
  isStandingBy(state, nowMs) || nowMs < state.talk.pausedUntilMs;
