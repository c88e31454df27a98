import type { CareIntent } from "../../../../language/careIntent.ts";
import type { SaidNumber } from "../../../../language/saidNumber.ts";
import type { CaseState } from "../../../../log/caseState.ts";
import { selectCalled } from "../../../../log/steps/openSteps.ts";
import { findStep } from "../../../../protocol/findStep.ts";
import type { AppContext } from "../../../context.ts";
import { refused, type Decision } from "../../decision.ts";
import type { Source } from "../../recordStatement.ts";
import { judgeAnswer } from "./answerStep.ts";
import { askAnswer } from "./askAnswer.ts";

type Quantity = { readonly number: SaidNumber; readonly unit: string };

/** The number and the unit of a quantity that was said without a drug, as the protocol writes units. */
function quantityOf(intent: CareIntent): Quantity | undefined {
  switch (intent.kind) {
    case "amount":
      return intent.amount.unit && { number: intent.amount, unit: intent.amount.unit };
    case "rate":
      return intent.rate.unit && { number: intent.rate, unit: intent.rate.unit };
    case "strength": {
      const { amount, volumeMl } = intent.strength;
      if (intent.drugId !== undefined || volumeMl !== undefined || amount.unit === undefined) return undefined;
      return { number: amount, unit: `${amount.unit}/mL` };
    }
    default:
      return undefined;
  }
}

/**
 * A quantity with its unit ("one hundred micrograms per mil", "five millilitres per hour") as the value of the step that
 * was called or asked about. It is always asked back: a quantity of a drug counts only once it is affirmed.
 *
 * @returns nothing where no step takes a quantity of this unit now.
 */
export function decideStepQuantity(
  { protocol }: AppContext,
  log: CaseState,
  intent: CareIntent,
  source: Source,
  nowMs: number,
): Decision | undefined {
  const said = quantityOf(intent);
  const [question] = log.questions;
  const asked = question?.wants?.kind === "stepValue" ? question.wants.stepId : undefined;
  const stepId = question === undefined ? selectCalled(log, protocol, nowMs)?.step.id : asked;
  if (said === undefined || stepId === undefined) return undefined;
  const step = findStep(protocol, stepId);
  if (step?.carries?.unit !== said.unit) return undefined;
  const judged = judgeAnswer(protocol, { stepId, answer: "done", value: said.number }, source.by);
  return judged.ok ? askAnswer(log, judged.value, source, nowMs) : refused(judged.error);
}
