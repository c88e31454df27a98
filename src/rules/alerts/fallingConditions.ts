import type { Minutes, Quantity } from "../../core/quantity.ts";
import { minutesUntil, slopePerMin, type Reading } from "../../core/trend.ts";
import type { CaseState } from "../../log/caseState.ts";
import { selectTargets } from "../../log/targets.ts";
import { beyond } from "../../protocol/alertLimits.ts";
import type { AlertRule, Protocol } from "../../protocol/protocol.ts";
import { pressureEveryS } from "../checkClocks.ts";
import { priorityOf } from "./bands.ts";
import { CAUSE_OF_CODE } from "./cause.ts";
import type { Condition } from "./condition.ts";
import { ruleFor, type JudgedRule } from "./judgedRule.ts";
import { isCurrent, watchedReadings, type WatchedReading } from "./watchedReadings.ts";

const MS_PER_MIN = 60_000;
/** Values that are called seldom say nothing of the next minutes. */
const FALLING_CODES: readonly AlertRule["code"][] = ["map", "cpp", "sbp", "spo2"];
/** Readings of less than this are one look, not a course. This project's choice, no source. */
const SHORTEST_COURSE_MS = 60_000;
/** Once it is called falling it stays so while it would cross within twice the time: it must not flicker. Ours. */
const STANDING_FACTOR = 2;

const nameOf = (ruleId: string): string => `${ruleId}:falling`;

type Any = Quantity<"watched">;

function inWindow(readings: Iterable<WatchedReading>, windowMs: number): readonly WatchedReading[] {
  const found: WatchedReading[] = [];
  for (const reading of readings) {
    if (found[0] !== undefined && found[0].atMs - reading.atMs > windowMs) break;
    found.push(reading);
  }
  return found;
}

/** How long until a value that falls steadily is at its target; none where it does not, or where the fall is within noise. */
function timeToTarget(rule: JudgedRule, newestFirst: readonly WatchedReading[], windowMs: number): Minutes | undefined {
  const [newest, before] = newestFirst;
  const oldest = newestFirst.at(-1);
  if (newest === undefined || before === undefined || oldest === undefined) return undefined;
  const points = newestFirst.map(({ value, atMs }): Reading<"watched"> => ({ atMs, value: value as Any }));
  const slope = slopePerMin(points, windowMs);
  const isCourse = newest.atMs - oldest.atMs >= SHORTEST_COURSE_MS;
  if (slope === undefined || !isCourse || newest.value >= before.value) return undefined;
  const fall = Number(slope) * -1 * ((newest.atMs - oldest.atMs) / MS_PER_MIN);
  if (fall < rule.clearBy) return undefined;
  return minutesUntil(newest.value as Any, rule.target as Any, slope);
}

function fallingCondition(state: CaseState, protocol: Protocol, alert: AlertRule, nowMs: number): readonly Condition[] {
  const { trend, conditions } = protocol;
  const rule = ruleFor(alert, selectTargets(state, protocol));
  if (rule === undefined || !isCurrent(state, protocol, alert.code)) return [];
  const windowMs = trend.windowS.value * 1000;
  const readings = inWindow(watchedReadings(state, protocol, alert.code), windowMs);
  const [newest] = readings;
  if (newest === undefined || readings.length < trend.fallingReadings.value) return [];
  // In a band it is an alert of its own; and an old fall foretells nothing.
  if (priorityOf(rule, newest.value) !== undefined || nowMs - newest.atMs > windowMs) return [];
  const minutes = timeToTarget(rule, readings, windowMs);
  const alertId = nameOf(alert.id);
  const isStanding = state.alerts[alertId] !== undefined;
  const withinMin = (pressureEveryS(state, protocol, nowMs) / 60) * (isStanding ? STANDING_FACTOR : 1);
  if (minutes === undefined || minutes > withinMin) return [];
  const { value, kind: origin, atMs } = newest;
  const inMs = Math.max(0, minutes * MS_PER_MIN - (nowMs - atMs));
  return [
    {
      alertId,
      cause: CAUSE_OF_CODE[alert.code],
      now: conditions.falling.value,
      held: undefined,
      value,
      isWorseThan: (kept) => beyond(value, kept, "under") >= rule.worseBy,
      body: { kind: "falling", code: alert.code, value, target: rule.target, inMs, origin },
      atMs,
    },
  ];
}

/**
 * Values still at their target that fall so fast that they will be under it before they are next taken.
 *
 * Not for: a promise. It is arithmetic on a straight line; see `minutesUntil`.
 */
export const fallingConditions = (state: CaseState, protocol: Protocol, nowMs: number): readonly Condition[] =>
  protocol.alerts
    .filter(({ code, side }) => side === "under" && FALLING_CODES.includes(code))
    .flatMap((alert) => fallingCondition(state, protocol, alert, nowMs));
