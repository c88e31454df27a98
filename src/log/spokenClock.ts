import type { SpokenClock } from "./careFacts.ts";
import type { ClockEntry } from "./careState.ts";
import type { CaseState } from "./caseState.ts";
import { linksOf } from "./chains.ts";

/** When a clock that runs by voice was started: its first start since it was last stopped. `undefined`: it does not run. */
export function spokenStart({ care }: Pick<CaseState, "care">, clock: SpokenClock): ClockEntry | undefined {
  let start: ClockEntry | undefined;
  for (const entry of linksOf(care.clocks[clock])) {
    if (!entry.runs) break;
    start = entry;
  }
  return start;
}
