import type { CaseState } from "../../../log/caseState.ts";
import type { NewFact } from "../../../log/facts.ts";
import { NEURO_SIGN } from "../../../rules/alerts/otherConditions.ts";
import { isAskedOfSign } from "../care/course/decideRescue.ts";

/** "Negative" to the question that a sign put is an answer to its alert too. */
export function acknowledgedByAnswer(log: CaseState, facts: readonly NewFact[]): readonly NewFact[] {
  const denied = facts.flatMap((f) => (f.type === "question.closed" && f.outcome === "denied" ? [f.questionId] : []));
  const isOfSign =
    NEURO_SIGN in log.alerts &&
    log.questions.some((question) => denied.includes(question.id) && isAskedOfSign(log, question));
  return isOfSign ? [{ type: "alert.acknowledged", alertId: NEURO_SIGN, heard: "negative" }] : [];
}
