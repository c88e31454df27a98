import { labelFrom } from "../caseLabel.ts";
import type { Fact } from "../facts.ts";

/** A fact as the first version wrote it: an opening had no label, and no case was a rehearsal. */
export function fromVersionOne(fact: { readonly v: 1; readonly type: string }): Fact {
  const { caseId } = fact as { readonly caseId?: unknown };
  const added = fact.type === "case.opened" ? { label: labelFrom(String(caseId)), rehearsal: false } : {};
  return { ...fact, v: 2, ...added } as Fact;
}
