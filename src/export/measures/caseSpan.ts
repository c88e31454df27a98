import { unreachable } from "../../core/unreachable.ts";
import type { Fact } from "../../log/facts.ts";
import type { RecordedCase } from "../recordedCase.ts";

/** Whether a person said something of the patient with it. What the tool said, asked or counted tells nothing of care. */
function isOfPatient(fact: Fact): boolean {
  switch (fact.type) {
    case "vital.recorded":
    case "finding.recorded":
    case "sex.recorded":
    case "cause.recorded":
    case "herniation.recorded":
    case "step.answered":
    case "phase.entered":
    case "airway.event":
    case "clock.started":
    case "clock.stopped":
    case "strength.affirmed":
    case "drug.given":
    case "infusion.set":
    case "fluid.given":
    case "cylinder.recorded":
    case "recipe.started":
    case "recipe.moved":
    case "recipe.ended":
    case "rescue.started":
    case "rescue.ended":
    case "failure.called":
      return true;
    case "case.opened":
    case "protocol.replaced":
    case "entry.struck":
    case "question.asked":
    case "question.closed":
    case "step.called":
    case "dose.said":
    case "list.read":
    case "prompt.announced":
    case "standBy.started":
    case "clock.changed":
    case "alert.raised":
    case "alert.announced":
    case "alert.cleared":
    case "alert.acknowledged":
    case "alerts.paused":
    case "talk.set":
    case "voice.set":
    case "speech.started":
    case "speech.cut":
      return false;
    default:
      return unreachable(fact);
  }
}

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
