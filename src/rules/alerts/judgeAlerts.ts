import type { AlertState, CaseState } from "../../log/caseState.ts";
import { isWorse, type Priority } from "../../protocol/priority.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { milder, worse } from "./bands.ts";
import type { Condition, DeviceFault } from "./condition.ts";
import { fallingConditions } from "./fallingConditions.ts";
import { limitConditions } from "./limitConditions.ts";
import { otherConditions } from "./otherConditions.ts";

/** How one alert stands after its condition was judged. */
export type Judged = {
  readonly condition: Condition;
  /** As the log has it. */
  readonly before: AlertState | undefined;
  /** As it should be; none: not standing. */
  readonly priority: Priority | undefined;
  /** Low, but it has stood for so long that it counts for more. */
  readonly escalated: boolean;
  /** `restated`: the number that was said of it was struck out, and there is another. */
  readonly change: "raised" | "worse" | "restated" | "milder" | "cleared" | "none";
};

/** A low alert that nobody has taken on becomes a medium one with time; and stays one while it stands. */
function isEscalated(
  { now }: Condition,
  base: Priority | undefined,
  before: AlertState | undefined,
  { timers }: Protocol,
  nowMs: number,
): boolean {
  if (base !== "low" || before === undefined) return false;
  if (before.escalated) return true;
  if (now === undefined || before.acknowledgedAtMs !== undefined) return false;
  return nowMs - before.raisedAtMs >= timers.escalateS.low.value * 1000;
}

function changeOf(
  condition: Condition,
  before: AlertState | undefined,
  after: Priority | undefined,
  isUntrue: boolean,
): Judged["change"] {
  if (after === undefined) return before === undefined ? "none" : "cleared";
  if (before === undefined) return "raised";
  if (isWorse(after, before.priority)) return "worse";
  if (condition.now !== undefined && condition.isWorseThan(before.keptValue)) return "worse";
  if (isUntrue && before.announcedAtSeq !== undefined && condition.now !== undefined) return "restated";
  return after === before.priority ? "none" : "milder";
}

function judge(state: CaseState, protocol: Protocol, condition: Condition, isUntrue: boolean, nowMs: number): Judged {
  const before = state.alerts[condition.alertId];
  // Only the value that holds now can raise or worsen; what was already standing steps down only by hysteresis.
  const held = before && milder(before.escalated ? "low" : before.priority, condition.held);
  const base = worse(condition.now, held);
  const escalated = isEscalated(condition, base, before, protocol, nowMs);
  const priority = escalated ? "medium" : base;
  return { condition, before, priority, escalated, change: changeOf(condition, before, priority, isUntrue) };
}

/** The alerts whose number was said and is another one since entries were struck out: what was said is no longer true. */
function untrueSince(before: CaseState | undefined, now: readonly Condition[], protocol: Protocol): readonly string[] {
  if (before === undefined) return [];
  const was = new Map(limitConditions(before, protocol).map(({ alertId, value }) => [alertId, value]));
  return now.flatMap(({ alertId, value }) => {
    const old = was.get(alertId);
    return old !== undefined && old !== value && old === before.alerts[alertId]?.keptValue ? [alertId] : [];
  });
}

/**
 * Every condition that there can be something to say about, held against what the log says of it.
 *
 * @param struckFrom the case before the turn, where entries were struck out in it.
 */
export function judgeAlerts(
  state: CaseState,
  protocol: Protocol,
  nowMs: number,
  devices: readonly DeviceFault[],
  struckFrom?: CaseState,
): readonly Judged[] {
  const conditions = [
    ...limitConditions(state, protocol),
    ...fallingConditions(state, protocol, nowMs),
    ...otherConditions(state, protocol, devices, nowMs),
  ];
  const untrue = untrueSince(struckFrom, conditions, protocol);
  return conditions.map((condition) => judge(state, protocol, condition, untrue.includes(condition.alertId), nowMs));
}
