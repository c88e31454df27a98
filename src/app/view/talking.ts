import { showTalking } from "../../language/sentences/shownTalk.ts";
import type { CaseState } from "../../log/caseState.ts";

/** How the tool talks where that is not as usual: silence must not be taken for all being well. */
export function viewTalking({ talk, standByUntilMs }: CaseState, nowMs: number): string {
  const left = (untilMs: number): number => Math.max(0, untilMs - nowMs);
  const { level, pace, volume, pausedUntilMs } = talk;
  return showTalking({
    level,
    pace,
    volume,
    pausedForMs: left(pausedUntilMs),
    standsByForMs: left(standByUntilMs ?? -Infinity),
  });
}
