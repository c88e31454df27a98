import type { CaseState } from "../../log/caseState.ts";
import type { Fact, NewFact } from "../../log/facts.ts";
import { FACT_VERSION } from "../../log/upgrade/readFact.ts";

/** How well the words were heard that led to a fact, and whether another word affirmed it. */
export type Provenance = Pick<Fact, "certainty" | "confirmation">;

/**
 * Numbers and dates new facts. Ids count up within the case, so the same inputs always give the same log.
 *
 * @param heard what goes with those of them that were heard; the others are ours.
 */
export function stamp(
  log: CaseState,
  facts: readonly NewFact[],
  nowMs: number,
  heard: Provenance = {},
): readonly Fact[] {
  const opened = facts.find((f) => f.type === "case.opened");
  const caseId = opened?.caseId ?? log.caseId ?? "case";
  return facts.map((fact, i) => ({
    v: FACT_VERSION,
    id: `${caseId}-${log.factCount + i}`,
    atMs: nowMs,
    ...("heard" in fact ? heard : {}),
    ...fact,
  }));
}
