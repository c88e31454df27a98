import type { CareIntent } from "../../../language/careIntent.ts";
import { NO_STEP_OPEN } from "../../../language/sentences/list.ts";
import { sayStepAnswer } from "../../../language/sentences/step.ts";
import type { CaseState } from "../../../log/caseState.ts";
import { selectCalled } from "../../../log/steps/openSteps.ts";
import { findStep } from "../../../protocol/findStep.ts";
import type { AppContext, AppState } from "../../context.ts";
import { moveRecipe } from "./moveRecipe.ts";
import { answered, refused, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";
import { judgeAnswer, passOverValues } from "./list/answerStep.ts";
import { recordOrAsk } from "./list/askAnswer.ts";
import { waive } from "./list/killers.ts";
import { callFailure, pauseList, readList } from "./list/readList.ts";
import { whatIsLeft } from "./list/whatIsLeft.ts";

type ListIntent = Extract<CareIntent, { readonly kind: "list" | "waive" | "step" }>;
type StepIntent = Extract<CareIntent, { readonly kind: "step" }>;

/** "Done", "later" to our question for a value: there is none to be had, and the step stays answered as it was. */
function leaveValue({ protocol }: AppContext, log: CaseState): Decision | undefined {
  const [question] = log.questions;
  const step = question?.wants?.kind === "stepValue" ? findStep(protocol, question.wants.stepId) : undefined;
  return step && answered(sayStepAnswer(step, { answer: "done" }), passOverValues(log));
}

/** An answer to the step that is named; a bare one to what was asked or called last. */
function answer(context: AppContext, log: CaseState, intent: StepIntent, source: Source, nowMs: number): Decision {
  const { protocol } = context;
  const left = intent.stepId === undefined ? leaveValue(context, log) : undefined;
  if (left !== undefined) return left;
  const stepId = intent.stepId ?? selectCalled(log, protocol, nowMs)?.step.id;
  if (stepId === undefined) return refused(NO_STEP_OPEN);
  const judged = judgeAnswer(protocol, { ...intent, stepId }, source.by);
  return judged.ok ? recordOrAsk(log, judged.value, source, nowMs) : refused(judged.error);
}

/** What follows from what was said of the steps. */
export function decideList(
  context: AppContext,
  { log }: AppState,
  intent: ListIntent,
  source: Source,
  nowMs: number,
): Decision {
  switch (intent.kind) {
    case "step": {
      const isBareDone = intent.stepId === undefined && intent.answer === "done";
      const moved = isBareDone ? moveRecipe(context, log, source, nowMs) : undefined;
      return moved ?? answer(context, log, intent, source, nowMs);
    }
    case "waive":
      return waive(log, context.protocol, intent.reason, source, nowMs);
    case "list":
      switch (intent.ask) {
        case "read":
          return readList(context, log, "all", nowMs);
        case "killer":
          return readList(context, log, "killer", nowMs);
        case "pause":
          return pauseList(log);
        case "left":
          return whatIsLeft(context, log, intent.group, nowMs);
        case "failedAirway":
          return callFailure(context, log, source, nowMs);
      }
  }
}
