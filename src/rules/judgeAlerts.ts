import type { AlertState, CaseState } from "../log/caseState.ts";
import { isWorse, type Priority } from "../protocol/priority.ts";
import { selectTargets } from "../log/targets.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { heldPriority, milder, priorityOf, worse } from "./bands.ts";
import { ruleFor, type JudgedRule } from "./judgedRule.ts";
import { isCurrent, watchedReadings, type WatchedReading } from "./watchedReadings.ts";

/** How one alert stands after its readings were judged. */
export type Judged = {
  readonly rule: JudgedRule;
  /** As the log has it. */
  readonly before: AlertState | undefined;
  /** As it should be; none: not standing. */
  readonly priority: Priority | undefined;
  readonly change: "raised" | "worse" | "milder" | "cleared" | "none";
  readonly newest: WatchedReading | undefined;
  /** The newest value holds now and lies in a band: only then is there something to say. */
  readonly isLow: boolean;
};

function changeOf(before: Priority | undefined, after: Priority | undefined): Judged["change"] {
  if (before === after) return "none";
  if (after === undefined) return "cleared";
  if (before === undefined) return "raised";
  return isWorse(after, before) ? "worse" : "milder";
}

function judge(state: CaseState, protocol: Protocol, rule: JudgedRule): Judged {
  const before = state.alerts[rule.id];
  const newest = watchedReadings(state, protocol, rule.code).next().value;
  const now = newest && isCurrent(state, protocol, rule.code) ? priorityOf(rule, newest.value) : undefined;
  // Only the value that holds now can raise or worsen; what was already standing steps down only by hysteresis.
  const held = before && milder(before.priority, heldPriority(rule, watchedReadings(state, protocol, rule.code)));
  const priority = worse(now, held);
  return { rule, before, priority, change: changeOf(before?.priority, priority), newest, isLow: now !== undefined };
}

/** Every alert of the protocol, judged on the readings that were not struck, by the limits that hold for the patient now. */
export function judgeAlerts(state: CaseState, protocol: Protocol): readonly Judged[] {
  const targets = selectTargets(state, protocol);
  return protocol.alerts.map((rule) => judge(state, protocol, ruleFor(rule, targets)));
}
