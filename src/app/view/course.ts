import { showAttempt } from "../../language/sentences/attempt.ts";
import { showClocks } from "../../language/sentences/clock.ts";
import { sayPhase } from "../../language/sentences/course.ts";
import { selectAirway } from "../../log/attempt.ts";
import type { CaseState } from "../../log/caseState.ts";
import { selectPhase } from "../../log/phase.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { clocksRunning } from "../../rules/clocks.ts";
import type { ScreenView } from "../screenView.ts";

/** Where the case stands: its phase, the attempt, the clocks that run. From what the voice speaks from. */
export function viewCourse(
  log: CaseState,
  protocol: Protocol,
  nowMs: number,
): Pick<ScreenView, "phaseText" | "attemptText" | "clocks"> {
  const last = selectAirway(log).attempts.at(-1);
  return {
    phaseText: sayPhase(selectPhase(log)),
    attemptText: last === undefined ? "" : showAttempt(last),
    clocks: showClocks(clocksRunning(log, protocol, nowMs), nowMs),
  };
}
