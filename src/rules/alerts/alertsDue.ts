import type { CaseState } from "../../log/caseState.ts";
import type { NewFact } from "../../log/facts.ts";
import type { Priority } from "../../protocol/priority.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { worse } from "./bands.ts";
import type { DeviceFault } from "./condition.ts";
import { judgeAlerts, type Judged } from "./judgeAlerts.ts";
import { isNews } from "./news.ts";
import { chooseSpeaker } from "./speaker.ts";
import { hasRoom, isQuiet, speechRoom } from "./speechRoom.ts";
import { standingOf, type StandingAlert } from "./standing.ts";

/** An alert to be announced now, and why. */
export type AlertDue = StandingAlert & {
  readonly reason: "raised" | "worse" | "again";
  /** `tone`: past the cap on spoken alerts, its sound alone. */
  readonly voice: "spoken" | "tone";
  /** Said before, and nobody has it. */
  readonly louder: boolean;
  /** All alerts that this announcement is for, itself among them. */
  readonly covers: readonly { readonly alertId: string; readonly priority: Priority; readonly value: number }[];
};

function factOf({ condition, priority, change, escalated }: Judged, struck: boolean): readonly NewFact[] {
  const { alertId, value } = condition;
  if (change === "none") return [];
  if (priority === undefined) return [{ type: "alert.cleared", alertId, ...(struck && { withdrawn: true as const }) }];
  return [{ type: "alert.raised", alertId, priority, value, ...(escalated && { escalated: true as const }) }];
}

/** Alerts that stand although there is no such condition now: no reading is left, or no such limit. */
function withoutCondition(state: CaseState, judged: readonly Judged[], struck: boolean): readonly NewFact[] {
  const ids = new Set(judged.map(({ condition }) => condition.alertId));
  const gone = Object.keys(state.alerts).filter((id) => !ids.has(id));
  return gone.map((alertId) => ({ type: "alert.cleared", alertId, ...(struck && { withdrawn: true as const }) }));
}

const latest = (numbers: readonly (number | undefined)[]): number =>
  Math.max(-Infinity, ...numbers.map((n) => n ?? -Infinity));

const isOpen = ({ before }: Judged): boolean => before?.acknowledgedAtMs === undefined;

/** How long after it was last said this is said again, s: a high one that nobody has taken on sooner the first time. */
function againAfterS(open: readonly Judged[], priority: Priority, { timers }: Protocol): number {
  const isFirst = open.every(({ before }) => (before?.times ?? 0) <= 1);
  return priority === "high" && isFirst ? timers.escalateS.high.value : timers.reannounceS[priority].value;
}

const worstOf = (all: readonly Judged[]): Priority | undefined =>
  all.reduce<Priority | undefined>((worst, j) => worse(worst, j.priority), undefined);

/** Why these alerts of one cause are to be said now; `undefined` when they have been said recently enough. */
function reasonFor(all: readonly Judged[], state: CaseState, protocol: Protocol, nowMs: number) {
  const news = all.filter(isNews);
  const priority = worstOf(all);
  if (priority === undefined || (isQuiet(state, nowMs) && priority !== "high")) return undefined;
  if (news.some((j) => j.change === "worse")) return "worse";
  if (news.length > 0) return "raised";
  // Also when the device clock was set back by as much: a reminder must not stay silent until it has caught up.
  const sinceMs = Math.abs(nowMs - latest(all.map((j) => j.before?.announcedAtMs)));
  return sinceMs >= againAfterS(all, priority, protocol) * 1000 ? "again" : undefined;
}

function announcementFor(
  all: readonly Judged[],
  room: number,
  /** A reminder is said in this round already: another one joins it. */
  joins: boolean,
  state: CaseState,
  protocol: Protocol,
  nowMs: number,
): readonly AlertDue[] {
  const reason = reasonFor(all, state, protocol, nowMs);
  const priority = worstOf(all);
  if (reason === undefined || priority === undefined) return [];
  const isOfDevice = all.some(({ condition }) => condition.cause === "device");
  const fits = isOfDevice || (joins && reason === "again") || hasRoom(room, priority, reason !== "again", protocol);
  // A reminder that is not pressing waits for room; what is new is never without a sound.
  if (!fits && reason === "again" && priority !== "high") return [];
  const speaker = chooseSpeaker(all);
  return standingOf(speaker, nowMs).map((alert) => ({
    ...alert,
    priority,
    reason,
    voice: fits ? "spoken" : "tone",
    louder: reason === "again" && priority === "high",
    covers: all.flatMap((j) =>
      j.priority === undefined
        ? []
        : [{ alertId: j.condition.alertId, priority: j.priority, value: j.condition.value }],
    ),
  }));
}

/**
 * Alerts that stand on a reading of this turn and have nothing new to say: its read-back says the number, so it counts as
 * said, and no reminder follows on its heels. Not those that somebody has: they are measured against what was taken on.
 */
function saidInReply(judged: readonly Judged[], announce: readonly AlertDue[], nowMs: number): readonly NewFact[] {
  const announced = new Set(announce.flatMap(({ covers }) => covers.map(({ alertId }) => alertId)));
  return judged.flatMap((j): readonly NewFact[] => {
    const { alertId, now, body, value, atMs } = j.condition;
    if (j.before === undefined || j.priority === undefined || now === undefined || isNews(j)) return [];
    if (announced.has(alertId) || !isOpen(j) || body?.kind !== "limit" || atMs !== nowMs) return [];
    if (j.before.keptValue === value) return [];
    return [{ type: "alert.announced", alertId, priority: j.priority, value, text: "", unspoken: true }];
  });
}

/**
 * Alerts that have something to say, those of one cause together, in the order of the protocol. One that somebody has says
 * nothing, and lends nothing of its weight to the others.
 */
function byCause(judged: readonly Judged[]): readonly (readonly Judged[])[] {
  const active = judged.filter((j) => j.condition.now !== undefined && (isNews(j) || isOpen(j)));
  const causes = [...new Set(active.map(({ condition }) => condition.cause))];
  return causes.map((cause) => active.filter(({ condition }) => condition.cause === cause));
}

type Due = {
  readonly facts: readonly NewFact[];
  readonly announce: readonly AlertDue[];
  /** Of alerts that the read-back of this turn speaks for. */
  readonly said: readonly NewFact[];
};

/**
 * What the alerts ask for now.
 *
 * `facts` are to be appended first; then, for each of `announce`, an `alert.announced` for each alert that it covers, and
 * `said`. Until that is in the log the same announcement stays due.
 *
 * Raised and worse alerts are due at once. Standing ones that nobody has acknowledged are due again by the clock of their
 * priority, while their value is in a band. While it is to be quiet only high ones are due. Past the cap on spoken alerts a
 * new or high one is a tone, and other reminders wait.
 *
 * @param devices    what is wrong with the device itself.
 * @param struckFrom the case before the turn, where entries were struck out in it: what is cleared now is withdrawn.
 *
 * Not for: judging a value that nobody confirmed; only recorded values count.
 */
export function alertsDue(
  state: CaseState,
  protocol: Protocol,
  nowMs: number,
  devices: readonly DeviceFault[] = [],
  struckFrom?: CaseState,
): Due {
  const judged = judgeAlerts(state, protocol, nowMs, devices, struckFrom);
  const struck = struckFrom !== undefined;
  const announce: AlertDue[] = [];
  const room = speechRoom(state, protocol, nowMs);
  for (const all of byCause(judged)) {
    const spoken = announce.filter(({ voice, cause }) => voice === "spoken" && cause !== "device");
    const reminders = spoken.filter(({ reason }) => reason === "again");
    // Reminders that fall due together are said in one breath, and count as one.
    const left = room - (spoken.length - Math.max(0, reminders.length - 1));
    announce.push(...announcementFor(all, left, reminders.length > 0, state, protocol, nowMs));
  }
  const facts = [...withoutCondition(state, judged, struck), ...judged.flatMap((j) => factOf(j, struck))];
  return { facts, announce, said: saidInReply(judged, announce, nowMs) };
}
