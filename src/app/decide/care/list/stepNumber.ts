import { toCanonical } from "../../../../core/convert.ts";
import type { VitalCode } from "../../../../core/vitals.ts";
import type { SaidNumber } from "../../../../language/saidNumber.ts";
import { askStepValue } from "../../../../language/sentences/stepValue.ts";
import type { CaseState } from "../../../../log/caseState.ts";
import type { NewFact, Question, SaidUnit } from "../../../../log/facts.ts";
import { reduceFacts } from "../../../../log/reduceFact.ts";
import { selectCalled } from "../../../../log/steps/openSteps.ts";
import { findStep } from "../../../../protocol/findStep.ts";
import type { Step } from "../../../../protocol/protocol.ts";
import type { AppContext } from "../../../context.ts";
import { decideVitals } from "../../decideVitals.ts";
import { refused, type Decision } from "../../decision.ts";
import type { Source } from "../../recordStatement.ts";
import { inSlot } from "../../saidVital.ts";
import { stamp } from "../../stamp.ts";
import { judgeAnswer, recordAnswer } from "./answerStep.ts";
import { recordOrAsk } from "./askAnswer.ts";

/** A step that a vital answers: its number is that vital, and belongs among the vitals. */
function vitalOf({ satisfiedBy }: Step): VitalCode | undefined {
  if (satisfiedBy?.kind === "etco2-in-band") return "etco2";
  const codes = satisfiedBy?.kind === "recorded" ? satisfiedBy.codes : [];
  return codes.length === 1 ? codes[0] : undefined;
}

/** The step whose value the newest question is about; none where it is about something else. */
function stepAsked({ wants, acts = [] }: Question): string | undefined {
  if (wants?.kind === "stepValue") return wants.stepId;
  const [act] = acts;
  return act?.kind === "step" && act.value !== undefined ? act.stepId : undefined;
}

/** The same number a second time to "fifteen, one five?" says that it was meant. */
const agrees = ({ acts = [] }: Question, number: SaidNumber): boolean =>
  acts.some((act) => act.kind === "step" && act.value?.value === number.value);

/** Unit names that the protocol writes in another way than a reading does. */
const SAME: Readonly<Partial<Record<SaidUnit, string>>> = { Cel: "°C" };

/**
 * A bare number as the value of a step: of the one that our newest question is about, or where nothing is asked, of the
 * one that was called and waits.
 *
 * @returns nothing where no step takes it.
 */
export function decideStepNumber(
  context: AppContext,
  log: CaseState,
  number: SaidNumber,
  unit: SaidUnit | undefined,
  source: Source,
  nowMs: number,
): Decision | undefined {
  const { protocol } = context;
  const [question] = log.questions;
  const stepId = question === undefined ? selectCalled(log, protocol, nowMs)?.step.id : stepAsked(question);
  const step = stepId === undefined ? undefined : findStep(protocol, stepId);
  if (step?.carries === undefined) return undefined;
  const code = vitalOf(step);
  if (code !== undefined && (unit === undefined || toCanonical(code, 1, unit).ok)) {
    const closed: readonly NewFact[] =
      question === undefined ? [] : [{ type: "question.closed", questionId: question.id, outcome: "restated" }];
    const asked = reduceFacts(stamp(log, closed, nowMs), log);
    const taken = decideVitals(context, asked, [inSlot(code, number, unit)], source, nowMs, { correction: false });
    return { ...taken, facts: [...closed, ...taken.facts] };
  }
  if (unit !== undefined && (SAME[unit] ?? unit) !== step.carries.unit) return refused(askStepValue(step.carries));
  return answerWith(context, log, step.id, number, question, source, nowMs);
}

function answerWith(
  { protocol }: AppContext,
  log: CaseState,
  stepId: string,
  value: SaidNumber,
  question: Question | undefined,
  source: Source,
  nowMs: number,
): Decision {
  const judged = judgeAnswer(protocol, { stepId, answer: "done", value }, source.by);
  if (!judged.ok) return refused(judged.error);
  if (question === undefined || !agrees(question, value)) return recordOrAsk(log, judged.value, source, nowMs);
  const closed: NewFact = { type: "question.closed", questionId: question.id, outcome: "affirmed" };
  return recordAnswer(log, judged.value.step, judged.value.given, source, nowMs, [closed]);
}

/**
 * "Correction, seven point five" when the value of a step was the last thing entered: it is that value that is meant, and
 * never the vital before it.
 */
export function correctStepValue(
  context: AppContext,
  log: CaseState,
  number: SaidNumber,
  source: Source,
  nowMs: number,
): Decision | undefined {
  const [newest] = Object.entries(log.steps).toSorted(([, a], [, b]) => b.seq - a.seq);
  if (newest === undefined) return undefined;
  const [stepId, { seq, value }] = newest;
  const isLast = seq > (log.lastReading?.seq ?? -1) && seq > (log.care.taken?.seq ?? -1);
  return isLast && value !== undefined ? answerWith(context, log, stepId, number, undefined, source, nowMs) : undefined;
}
