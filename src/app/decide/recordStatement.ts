import type { CaseState } from "../../log/caseState.ts";
import type { SaidItem } from "../../language/intent.ts";
import type { FindingValue, HeardBy, NewFact, Statement } from "../../log/facts.ts";

export type Source = { readonly heard: string; readonly by: HeardBy };

/** What is said without a number, as a statement of its own; nothing where there is none. */
export function findingsOf(items: readonly SaidItem[]): Statement | undefined {
  const findings = items.flatMap((item): readonly FindingValue[] => {
    if (item.kind !== "finding") return [];
    const { kind: _kind, ...finding } = item;
    return [finding];
  });
  const sex = items.find((item) => item.kind === "sex");
  if (findings.length === 0 && sex === undefined) return undefined;
  return { vitals: [], findings, ...(sex?.kind === "sex" ? { sex: sex.sex } : {}) };
}

/**
 * The facts that put statements of one breath into the log: they share one reading, and what they correct is struck first.
 *
 * @param alreadyNew facts of this turn before these, so that reading ids stay apart.
 */
export function recordStatements(
  log: CaseState,
  statements: readonly Statement[],
  { heard, by }: Source,
  strikes: readonly string[],
  alreadyNew = 0,
): readonly NewFact[] {
  const readingId = `reading-${log.factCount + alreadyNew}`;
  const source = { readingId, heard, by };
  const facts: NewFact[] = [];
  if (strikes.length > 0) facts.push({ type: "entry.struck", targetIds: strikes, reason: "corrected" });
  for (const s of statements) {
    for (const vital of s.vitals) facts.push({ type: "vital.recorded", ...vital, ...source });
    for (const finding of s.findings) facts.push({ type: "finding.recorded", ...finding, ...source });
    if (s.sex !== undefined) facts.push({ type: "sex.recorded", sex: s.sex, ...source });
  }
  return facts;
}
