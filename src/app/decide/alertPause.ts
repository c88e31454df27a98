import { refusePause, sayAlertsOn, sayPaused } from "../../language/sentences/talk.ts";
import type { SaidNumber } from "../../language/saidNumber.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { NewFact } from "../../log/facts.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { isStandingBy } from "../../rules/standBy.ts";
import { answered, refused, type Decision } from "./decision.ts";
import type { Source } from "./recordStatement.ts";

const MS_PER_MIN = 60_000;

/** "Pause alerts two minutes"; without a length as long as the protocol stands by. A high alert is never held back. */
export function pauseAlerts(
  { timers }: Protocol,
  minutes: SaidNumber | undefined,
  { heard }: Source,
  nowMs: number,
): Decision {
  const forMs = minutes === undefined ? timers.standByS.value * 1000 : minutes.value * MS_PER_MIN;
  const mostMs = timers.alertPauseMaxS.value * 1000;
  if (forMs > mostMs) return refused(refusePause(mostMs));
  return answered(sayPaused(forMs), [{ type: "alerts.paused", untilMs: nowMs + forMs, heard }]);
}

/** "Alerts on": ends a pause, and a stand by, which holds them too. */
export function resumeAlerts(log: CaseState, { heard }: Source, nowMs: number): Decision {
  const isPaused = nowMs < log.talk.pausedUntilMs;
  const stands = isStandingBy(log, nowMs);
  const facts: NewFact[] = [
    ...(isPaused ? [{ type: "alerts.paused", untilMs: nowMs, heard } as const] : []),
    ...(stands ? [{ type: "standBy.started", untilMs: nowMs } as const] : []),
  ];
  return answered(sayAlertsOn(isPaused || stands), facts);
}
