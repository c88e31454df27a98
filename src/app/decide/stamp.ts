import type { CaseState } from "../../log/caseState.ts";
import type { Fact, NewFact } from "../../log/facts.ts";

/** Numbers and dates new facts. Ids count up within the case, so the same inputs always give the same log. */
export function stamp(log: CaseState, facts: readonly NewFact[], nowMs: number): readonly Fact[] {
  const opened = facts.find((f) => f.type === "case.opened");
  const caseId = log.caseId ?? opened?.caseId ?? "case";
  return facts.map((fact, i) => ({ v: 1, id: `${caseId}-${log.factCount + i}`, atMs: nowMs, ...fact }));
}
