import { deficit } from "../core/pressure.ts";
import type { CaseState } from "../log/caseState.ts";
import type { NewFact } from "../log/facts.ts";
import type { Priority } from "../protocol/priority.ts";
import type { Protocol, WatchedCode } from "../protocol/protocol.ts";
import { worse } from "./bands.ts";
import { judgeAlerts, type Judged } from "./judgeAlerts.ts";
import { isStandingBy } from "./standBy.ts";

/** A standing alert with the number it stands for. */
export type StandingAlert = {
  readonly alertId: string;
  readonly priority: Priority;
  readonly code: WatchedCode;
  /** In the unit of what is watched: mmHg, or % for `spo2`. Unrounded. */
  readonly value: number;
  readonly target: number;
  /** How far under target; 0 where the value is back at target and the alert waits to be sure. */
  readonly deficit: number;
  readonly ageMs: number;
  readonly kind: "measured" | "computed";
};

/** An alert to be announced now, and why. */
export type AlertDue = StandingAlert & { readonly reason: "raised" | "worse" | "again" };

function standing({ rule, priority, newest }: Judged, nowMs: number): readonly StandingAlert[] {
  if (priority === undefined || newest === undefined) return [];
  const { id: alertId, code, target } = rule;
  const { value, kind } = newest;
  const ageMs = Math.max(0, nowMs - newest.atMs);
  return [{ alertId, priority, code, value, target, deficit: deficit(value, target), ageMs, kind }];
}

function factOf({ rule, priority, change, newest }: Judged): readonly NewFact[] {
  if (change === "none") return [];
  if (priority === undefined || newest === undefined) return [{ type: "alert.cleared", alertId: rule.id }];
  return [{ type: "alert.raised", alertId: rule.id, priority, value: newest.value }];
}

/** Alerts that stand since before the protocol was replaced by one that does not have them. */
function withoutRule(state: CaseState, judged: readonly Judged[]): readonly NewFact[] {
  const ids = new Set(judged.map(({ rule }) => rule.id));
  const gone = Object.keys(state.alerts).filter((id) => !ids.has(id));
  return gone.map((alertId) => ({ type: "alert.cleared", alertId }));
}

/** Alerts with one cause are said as one: a low CPP that is measured speaks for the mean pressure too. */
function voices(judged: readonly Judged[]): readonly { readonly speaker: Judged; readonly all: readonly Judged[] }[] {
  const low = judged.filter((j) => j.isLow);
  const cpp = low.find((j) => j.rule.code === "cpp");
  return low.flatMap((speaker) => {
    if (speaker.rule.code === "map" && cpp !== undefined) return [];
    return [{ speaker, all: speaker === cpp ? low.filter((j) => j === cpp || j.rule.code === "map") : [speaker] }];
  });
}

const latest = (numbers: readonly (number | undefined)[]): number =>
  Math.max(-Infinity, ...numbers.map((n) => n ?? -Infinity));

/** Why these alerts are to be said now; `undefined` when they have been said recently enough. */
function reasonFor(all: readonly Judged[], priority: Priority, state: CaseState, protocol: Protocol, nowMs: number) {
  const changes = all.map((j) => j.change);
  if (changes.includes("worse")) return "worse";
  if (changes.includes("raised")) return "raised";
  const saidAtSeq = latest(all.map((j) => j.before?.announcedAtSeq));
  // Raised, but the words never left: the page was reloaded in between.
  if (latest(all.map((j) => j.before?.raisedAtSeq)) > saidAtSeq) return "raised";
  if (isStandingBy(state, nowMs) && priority !== "high") return undefined;
  const sinceMs = nowMs - latest(all.map((j) => j.before?.announcedAtMs));
  return sinceMs >= protocol.timers.reannounceS[priority].value * 1000 ? "again" : undefined;
}

/** Alerts that stand, with their numbers, in the order of the protocol: for the screen. */
export const standingAlerts = (state: CaseState, protocol: Protocol, nowMs: number): readonly StandingAlert[] =>
  judgeAlerts(state, protocol).flatMap((judged) => standing(judged, nowMs));

/**
 * What the alerts ask for now.
 *
 * `facts` are to be appended first; then, for each of `announce`, an `alert.announced` with the words that were queued.
 * Until that is in the log the same announcement stays due.
 *
 * Raised and worse alerts are due at once, also while standing by. Standing ones are due again by the clock of their
 * priority, while their value is in a band; not while standing by, unless high.
 * Not for: judging a value that nobody confirmed; only recorded values count.
 */
export function alertsDue(
  state: CaseState,
  protocol: Protocol,
  nowMs: number,
): { readonly facts: readonly NewFact[]; readonly announce: readonly AlertDue[] } {
  const judged = judgeAlerts(state, protocol);
  const announce = voices(judged).flatMap(({ speaker, all }) => {
    const priority = all.reduce<Priority | undefined>((worst, j) => worse(worst, j.priority), undefined);
    const reason = priority && reasonFor(all, priority, state, protocol, nowMs);
    if (priority === undefined || reason === undefined) return [];
    return standing(speaker, nowMs).map((alert): AlertDue => ({ ...alert, priority, reason }));
  });
  return { facts: [...withoutRule(state, judged), ...judged.flatMap(factOf)], announce };
}
