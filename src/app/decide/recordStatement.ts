import type { CaseState } from "../../log/caseState.ts";
import type { SaidItem } from "../../language/intent.ts";
import type { FindingValue, NewFact, Statement } from "../../log/facts.ts";
import type { HeardBy } from "../../log/heardBy.ts";
import { mergeBackground, type Background } from "../../log/statements.ts";

export type Source = { readonly heard: string; readonly by: HeardBy };

function backgroundOf(item: SaidItem): Background {
  switch (item.kind) {
    case "sex":
      return { sex: item.sex };
    case "cause":
      return { cause: item.cause };
    case "herniation":
      return { herniation: item.present };
    case "vital":
    case "finding":
      return {};
  }
}

/** What is said without a number, as a statement of its own; nothing where there is none. */
export function findingsOf(items: readonly SaidItem[]): Statement | undefined {
  const findings = items.flatMap((item): readonly FindingValue[] => {
    if (item.kind !== "finding") return [];
    const { kind: _kind, ...finding } = item;
    return [finding];
  });
  const background = mergeBackground(items.map(backgroundOf));
  if (findings.length === 0 && Object.keys(background).length === 0) return undefined;
  return { vitals: [], findings, ...background };
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
    if (s.cause !== undefined) facts.push({ type: "cause.recorded", cause: s.cause, ...source });
    if (s.herniation !== undefined) facts.push({ type: "herniation.recorded", present: s.herniation, ...source });
  }
  return facts;
}
