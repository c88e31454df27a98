import { askStep } from "../../../../language/sentences/act.ts";
import type { CaseState } from "../../../../log/caseState.ts";
import type { NewFact } from "../../../../log/facts.ts";
import { askQuestion } from "../../askQuestion.ts";
import type { Decision } from "../../decision.ts";
import type { Source } from "../../recordStatement.ts";
import { closeAbout } from "../askCare.ts";
import { recordAnswer, type JudgedAnswer } from "./answerStep.ts";

/** Closes the questions that ask back an answer to this step: it was said anew. */
const closeAsked = (log: CaseState, stepId: string): readonly NewFact[] =>
  log.questions.flatMap(({ id, acts = [] }) =>
    acts.some((act) => act.kind === "step" && act.stepId === stepId)
      ? [{ type: "question.closed", questionId: id, outcome: "restated" } as const]
      : [],
  );

/** Asks an answer back: it counts once it is affirmed. */
export function askAnswer(
  log: CaseState,
  { step, given, alikes }: JudgedAnswer,
  source: Source,
  nowMs: number,
): Decision {
  const closed = [...closeAsked(log, step.id), ...closeAbout(log, `step ${step.id}`)];
  const reason = alikes.length > 0 ? "sound-alike" : "always-confirm";
  const acts = [{ kind: "step", stepId: step.id, ...given } as const];
  return askQuestion(log, { prompt: askStep(step, given), source, nowMs }, { reason, acts }, closed);
}

/** Puts the answer into the log, or asks it back where its number sounds like another that the step could carry. */
export function recordOrAsk(log: CaseState, judged: JudgedAnswer, source: Source, nowMs: number): Decision {
  const { step, given, alikes } = judged;
  if (alikes.length > 0) return askAnswer(log, judged, source, nowMs);
  return recordAnswer(log, step, given, source, nowMs, closeAsked(log, step.id));
}
