import type { CaseState } from "../../../log/caseState.ts";
import type { AffirmedFact } from "../../../log/facts.ts";
import type { AppContext } from "../../context.ts";
import { recorded, type Decision } from "../decision.ts";

/** What was read back has been affirmed: it is put into the log as it was read, and what follows from it is said. */
export function recordAffirmed(
  _context: AppContext,
  _log: CaseState,
  facts: readonly AffirmedFact[],
  _nowMs: number,
): Decision {
  return recorded("Recorded.", facts);
}
