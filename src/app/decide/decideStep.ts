import type { CaseState } from "../../log/caseState.ts";
import type { StepAnswer } from "../../log/facts.ts";
import { sayStepAnswer } from "../../language/sentences/step.ts";
import { findStep } from "../../protocol/findStep.ts";
import type { AppContext } from "../context.ts";
import { recorded, refused, type Decision } from "./decision.ts";
import type { Source } from "./recordStatement.ts";

/** An answer to the step that is named, or to the one last called. */
export function decideStep(
  { protocol }: AppContext,
  log: CaseState,
  stepId: string | undefined,
  answer: StepAnswer,
  source: Source,
): Decision {
  const id = stepId ?? log.calledStepId;
  if (id === undefined) return refused("No step is open. Say next.");
  const step = findStep(protocol, id);
  if (step === undefined) return refused("That step is not in this protocol.");
  return recorded(sayStepAnswer(step, answer), [{ type: "step.answered", stepId: id, answer, ...source }]);
}
