import type { Fact } from "../../log/facts.ts";
import type { RecordedCase } from "../recordedCase.ts";

/** Whether somebody said something of the patient with it. What the tool said, asked or counted tells nothing of care. */
const isOfPatient = (fact: Fact): boolean => "by" in fact;

export type Span = { readonly fromMs: number; readonly toMs: number };

/**
 * From when to when somebody spoke of the patient, Unix ms: from the first statement that counts to the last. A case that
 * was opened at the base, or left open after the handover, is no longer for it. None where nothing was said.
 */
export function selectCaseSpan({ facts, struckIds }: RecordedCase): Span | undefined {
  let span: Span | undefined;
  for (const fact of facts) {
    if (!isOfPatient(fact) || struckIds.has(fact.id)) continue;
    const { fromMs = fact.atMs, toMs = fact.atMs } = span ?? {};
    span = { fromMs: Math.min(fromMs, fact.atMs), toMs: Math.max(toMs, fact.atMs) };
  }
  return span;
}

/** How long somebody spoke of the patient, ms. */
export function caseSpanMs(recorded: RecordedCase): number {
  const span = selectCaseSpan(recorded);
  return span === undefined ? 0 : span.toMs - span.fromMs;
}
