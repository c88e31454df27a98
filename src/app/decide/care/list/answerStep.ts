import { digitSoundAlikes, soundAlikes } from "../../../../language/numbers/soundAlikes.ts";
import type { SaidNumber } from "../../../../language/saidNumber.ts";
import { UNKNOWN_STEP } from "../../../../language/sentences/list.ts";
import { sentences } from "../../../../language/sentences/sentence.ts";
import { sayStepAnswer } from "../../../../language/sentences/step.ts";
import { askStepValue, sayOutside } from "../../../../language/sentences/stepValue.ts";
import { fail, ok, type Result } from "../../../../core/result.ts";
import type { CaseState } from "../../../../log/caseState.ts";
import type { AnswerToStep, NewFact, StepAnswer } from "../../../../log/facts.ts";
import type { HeardBy } from "../../../../log/heardBy.ts";
import { findStep } from "../../../../protocol/findStep.ts";
import type { Protocol, Step } from "../../../../protocol/protocol.ts";
import { recorded, type Decision } from "../../decision.ts";
import type { Source } from "../../recordStatement.ts";
import { askFor, closeAbout } from "../askCare.ts";

/** An answer as it was said, to the step that it means. */
export type SaidAnswer = {
  readonly stepId: string;
  readonly answer: StepAnswer;
  readonly value?: SaidNumber;
  readonly reason?: string;
  readonly role?: string;
};

/** An answer with its value in the unit of the protocol, and what that value may have been instead. */
export type JudgedAnswer = {
  readonly step: Step;
  readonly given: AnswerToStep;
  /** Within the limits of the step and of nearly the same sound. */
  readonly alikes: readonly number[];
};

function alikesOf({ low, high }: NonNullable<Step["carries"]>, said: SaidNumber, by: HeardBy): readonly number[] {
  const alikes = by === "browser" ? digitSoundAlikes(said.value) : soundAlikes(said.words.split(" "));
  return alikes.map(({ value }) => value).filter((value) => value >= low && value <= high);
}

/**
 * Holds an answer against what its step carries.
 *
 * @returns the answer, or why it is refused, in words. A value that the protocol has no place for is left out.
 */
export function judgeAnswer(protocol: Protocol, said: SaidAnswer, by: HeardBy): Result<JudgedAnswer, string> {
  const { stepId, answer, value, reason, role } = said;
  const step = findStep(protocol, stepId);
  if (step === undefined) return fail(UNKNOWN_STEP);
  const { carries } = step;
  const rest = { answer, ...(reason === undefined ? {} : { reason }), ...(role === undefined ? {} : { role }) };
  if (value === undefined || carries === undefined) return ok({ step, given: rest, alikes: [] });
  if (value.value < carries.low || value.value > carries.high) return fail(sentences(sayOutside(carries, value.value)));
  const given: AnswerToStep = { ...rest, value: { value: value.value, unit: carries.unit } };
  return ok({ step, given, alikes: alikesOf(carries, value, by) });
}

/** Closes the questions for values of steps, less that of one step: nobody has to answer them. */
export const passOverValues = (log: CaseState, exceptStepId?: string): readonly NewFact[] =>
  log.questions.flatMap(({ id, wants }) =>
    wants?.kind === "stepValue" && wants.stepId !== exceptStepId
      ? [{ type: "question.closed", questionId: id, outcome: "unconfirmed" } as const]
      : [],
  );

/**
 * Puts the answer into the log and reads it back; a value that is missing is asked for once.
 *
 * @param before facts that go into the log with it.
 */
export function recordAnswer(
  log: CaseState,
  step: Step,
  given: AnswerToStep,
  source: Source,
  nowMs: number,
  before: readonly NewFact[] = [],
): Decision {
  const fact: NewFact = { type: "step.answered", stepId: step.id, ...given, ...source };
  const readBack = sayStepAnswer(step, { ...given, heard: source.heard });
  const passedOver = [...before, ...passOverValues(log, step.id)];
  if (given.answer !== "done" || step.carries === undefined || given.value !== undefined)
    return recorded(readBack, [...passedOver, ...closeAbout(log, `step ${step.id}`), fact]);
  const prompt = askStepValue(step.carries);
  const asked = askFor(log, { kind: "stepValue", stepId: step.id }, { prompt, source, nowMs }, [...passedOver, fact]);
  return { ...asked, reply: { kind: "words", text: sentences(readBack, prompt) } };
}
