import type { CaseState } from "../log/caseState.ts";
import type { NewFact } from "../log/facts.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { isStandingBy } from "./standBy.ts";

/**
 * Closes the questions that nobody answered in time: what was heard stays in the log as unconfirmed and never counts.
 * None while standing by; afterwards each has its full time again.
 *
 * @returns facts to append, oldest question first.
 */
export function questionsDue(state: CaseState, protocol: Protocol, nowMs: number): readonly NewFact[] {
  if (isStandingBy(state, nowMs)) return [];
  const timeoutMs = protocol.timers.questionTimeoutS.value * 1000;
  const sinceMs = state.standByUntilMs ?? -Infinity;
  return state.questions
    .filter((question) => nowMs - Math.max(question.askedAtMs, sinceMs) >= timeoutMs)
    .toReversed()
    .map((question) => ({ type: "question.closed", questionId: question.id, outcome: "unconfirmed" }));
}
