import type { CaseState } from "../../log/caseState.ts";
import type { Priority } from "../../protocol/priority.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import type { AlertCause } from "./cause.ts";
import type { AlertBody, DeviceFault } from "./condition.ts";
import { judgeAlerts, type Judged } from "./judgeAlerts.ts";

/** A standing alert with the number it stands for. */
export type StandingAlert = {
  readonly alertId: string;
  readonly cause: AlertCause;
  readonly priority: Priority;
  readonly body: AlertBody;
  /** Of its oldest number. */
  readonly ageMs: number;
  /** Somebody has it. */
  readonly acknowledged: boolean;
};

/** The alert of a judgement; none where it does not stand. */
export function standingOf({ condition, priority, before, change }: Judged, nowMs: number): readonly StandingAlert[] {
  const { alertId, cause, body, atMs } = condition;
  if (priority === undefined || body === undefined) return [];
  const acknowledged = change !== "worse" && before?.acknowledgedAtMs !== undefined;
  return [{ alertId, cause, priority, body, ageMs: Math.max(0, nowMs - atMs), acknowledged }];
}

/** What the alerts of this list say that were spoken: by what was true before. */
export const bodiesSaid = (
  before: CaseState,
  protocol: Protocol,
  alertIds: readonly string[],
  nowMs: number,
): readonly AlertBody[] =>
  standingAlerts(before, protocol, nowMs).flatMap(({ alertId, body }) =>
    alertIds.includes(alertId) && before.alerts[alertId]?.spoken === true ? [body] : [],
  );

/** Alerts that stand, with their numbers, in the order of the protocol: for the screen. */
export const standingAlerts = (
  state: CaseState,
  protocol: Protocol,
  nowMs: number,
  devices: readonly DeviceFault[] = [],
): readonly StandingAlert[] =>
  judgeAlerts(state, protocol, nowMs, devices).flatMap((judged) => standingOf(judged, nowMs));
