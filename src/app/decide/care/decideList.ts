import type { CareIntent } from "../../../language/careIntent.ts";
import type { AppContext, AppState } from "../../context.ts";
import { closedBy } from "../decideAct.ts";
import { decideStep } from "../decideStep.ts";
import { refused, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";

type ListIntent = Extract<CareIntent, { readonly kind: "list" | "waive" | "step" }>;

/** What follows from what was said of the steps. */
export function decideList(
  context: AppContext,
  { log }: AppState,
  intent: ListIntent,
  source: Source,
  _nowMs: number,
): Decision {
  if (intent.kind !== "step") return refused(`${intent.kind} is not understood yet.`);
  const stepId = intent.stepId ?? log.calledStepId;
  const closed = stepId === undefined ? [] : closedBy(log, [{ kind: "step", stepId, answer: intent.answer }]);
  const { facts, ...rest } = decideStep(context, log, stepId, intent.answer, source);
  return { ...rest, facts: [...closed, ...facts] };
}
