import { sayLength } from "../../../../language/sentences/clock.ts";
import { sayClockChange } from "../../../../language/sentences/course.ts";
import type { SpokenClock } from "../../../../log/careFacts.ts";
import type { CaseState } from "../../../../log/caseState.ts";
import { selectApnoea } from "../../../../log/apnoea.ts";
import { spokenStart } from "../../../../log/spokenClock.ts";
import { answered, recorded, type Decision } from "../../decision.ts";
import type { Source } from "../../recordStatement.ts";

/** Since when it runs: by voice, or the apnoea by a fact. */
const runningSince = (log: CaseState, clock: SpokenClock) =>
  clock === "apnoea" ? selectApnoea(log) : spokenStart(log, clock);

/** A clock is started or stopped by voice. One that runs goes on from its own start. */
export function decideClock(
  log: CaseState,
  clock: SpokenClock,
  change: "start" | "stop",
  source: Source,
  nowMs: number,
): Decision {
  const since = runningSince(log, clock);
  const lasted = since && sayLength(nowMs - since.atMs);
  if (change === "start") {
    if (since !== undefined) return answered(sayClockChange(clock, "runs already", lasted));
    return recorded(sayClockChange(clock, "started"), [{ type: "clock.started", clock, ...source }]);
  }
  if (since === undefined) return answered(sayClockChange(clock, "not running"));
  return recorded(sayClockChange(clock, "stopped", lasted), [{ type: "clock.stopped", clock, ...source }]);
}
