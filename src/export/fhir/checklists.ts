import type { QuestionnaireResponse, QuestionnaireResponseItem } from "@medplum/fhirtypes";
import { findStep } from "../../protocol/findStep.ts";
import { ANSWERS, LISTS } from "../listWords.ts";
import { own } from "./codes.ts";
import { referTo, type Context, type Exported } from "./elements.ts";
import { resourceId } from "./resourceId.ts";
import { stepRuns, struckAnswerKey, type AnswerFact, type StepRun } from "./stepRuns.ts";
import { stepQuantity } from "./stepValues.ts";

/** One step: its challenge as it was read, its answer, and under that what was said with it. */
function item({ recorded, time, heard }: Context, fact: AnswerFact): QuestionnaireResponseItem {
  const { stepId, answer, value, reason, role } = fact;
  const step = findStep(recorded.protocol, stepId);
  const part = (name: string, text: string, said: NonNullable<QuestionnaireResponseItem["answer"]>[number]) => ({
    linkId: `${stepId}.${name}`,
    text,
    answer: [said],
  });
  const words = heard(fact);
  return {
    linkId: stepId,
    text: step?.challenge ?? stepId,
    answer: [
      {
        valueCoding: { ...own(answer), display: ANSWERS[answer] },
        item: [
          part("time", "said at", { valueDateTime: time(fact.atMs) }),
          ...(value === undefined
            ? []
            : [part("value", step?.carries?.what ?? "value", { valueQuantity: stepQuantity(value) })]),
          ...(reason === undefined ? [] : [part("reason", "reason, as said", { valueString: reason })]),
          ...(role === undefined ? [] : [part("role", "who does it, by role", { valueString: role })]),
          ...(words === undefined ? [] : [part("words", "heard", { valueString: words })]),
        ],
      },
    ],
  };
}

function response(context: Context, key: string, answers: readonly AnswerFact[]): QuestionnaireResponse {
  return {
    resourceType: "QuestionnaireResponse",
    id: resourceId(key),
    ...context.meta,
    status: "in-progress",
    subject: context.subject,
    encounter: context.encounter,
    authored: context.time(Math.max(...answers.map(({ atMs }) => atMs))),
    author: context.device,
    item: answers.map((fact) => item(context, fact)),
  };
}

/** One reading of one list: definitive once nothing is added to it any more. */
function ofRun(context: Context, { key, list, answers, rescueId, isOver }: StepRun): QuestionnaireResponse {
  const one = response(context, key, answers);
  return {
    ...one,
    status: isOver ? "completed" : "in-progress",
    ...(rescueId === undefined ? {} : { partOf: [referTo(rescueId)] }),
    item: [{ linkId: list ?? "other", text: list === undefined ? "Other steps" : LISTS[list], item: one.item ?? [] }],
  };
}

/**
 * The lists as they were answered. As `QuestionnaireResponse`, since "sedation: done" answers "ready for afterwards?" and
 * is no sedation; with the last answer to each step, and every answer that was struck out by itself.
 */
export function checklists(context: Context): readonly Exported<QuestionnaireResponse>[] {
  const { facts, struckIds } = context.recorded;
  const struck = facts
    .filter((fact): fact is AnswerFact => fact.type === "step.answered" && struckIds.has(fact.id))
    .map((fact): QuestionnaireResponse => ({
      ...response(context, struckAnswerKey(fact), [fact]),
      status: "entered-in-error",
    }));
  const runs = stepRuns(context).map((run) => ofRun(context, run));
  return [...runs, ...struck].map((resource) => ({ resource, origins: ["spoken"] }));
}
