import { toCanonical } from "../../core/convert.ts";
import type { SaidVital } from "../../language/intent.ts";
import type { SaidNumber } from "../../language/saidNumber.ts";
import { soundAlikes } from "../../language/numbers/soundAlikes.ts";
import { NO_VALUE } from "../../language/sentences/stepValue.ts";
import { sentences } from "../../language/sentences/sentence.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { Candidate, NewFact, Question, SaidUnit, VitalValue } from "../../log/facts.ts";
import { asksRescue } from "../../rules/herniationWatch.ts";
import type { AppContext } from "../context.ts";
import { answerWant } from "./care/answerWant.ts";
import { denyRescue } from "./care/course/decideRescue.ts";
import { decideStepNumber } from "./care/list/stepNumber.ts";
import { takeAct, waitingAfter } from "./decideAct.ts";
import { decideVitals } from "./decideVitals.ts";
import { answered, ignored, refused, type Decision } from "./decision.ts";
import { recordStatements, type Source } from "./recordStatement.ts";
import { asSaidVital, inSlot, withNumber } from "./saidVital.ts";
import { inheritedUnit } from "./units.ts";

/** The prompt proposes its first candidate, so "affirm" is an answer. A question of which of several is not answered by it. */
const proposesOne = (q: Question): boolean =>
  q.candidates.length === 1 ||
  (q.candidates.length > 1 && q.reason !== "unit" && q.reason !== "acoustic" && q.reason !== "ambiguous");

function take(log: CaseState, question: Question, chosen: Candidate): Decision {
  const closed: NewFact = { type: "question.closed", questionId: question.id, outcome: "affirmed" };
  const source = { heard: question.heard, by: question.by };
  const facts = recordStatements(log, [chosen.statement], source, question.strikes, 1);
  return {
    facts: [closed, ...facts],
    outcome: "recorded",
    reply: { kind: "recorded", statements: [chosen.statement], then: waitingAfter(log, question) },
  };
}

/** The unit is settled now, and only now can it be said whether the number itself must be asked back. */
function takeWithUnit(context: AppContext, log: CaseState, question: Question, chosen: Candidate, nowMs: number) {
  const { heard, by } = question;
  const said = chosen.statement.vitals.map(asSaidVital);
  const checked = decideVitals(context, log, said, { heard, by }, nowMs, { correction: false });
  return checked.outcome === "asked" ? checked : take(log, question, chosen);
}

export function decideAffirm(context: AppContext, log: CaseState, nowMs: number): Decision {
  const [question] = log.questions;
  if (question === undefined) return ignored;
  const [act, ...others] = question.acts ?? [];
  if (act !== undefined && others.length === 0) return takeAct(context, log, question, act, nowMs);
  const [first] = question.candidates;
  if (first === undefined || !proposesOne(question)) return refused(question.prompt);
  return question.reason === "unit" ? takeWithUnit(context, log, question, first, nowMs) : take(log, question, first);
}

export function decideNegative(log: CaseState): Decision {
  const [question] = log.questions;
  if (question === undefined) return ignored;
  if (asksRescue(question)) return denyRescue(log, question);
  const next = waitingAfter(log, question);
  // The step itself was answered: only its value stays out.
  if (question.wants?.kind === "stepValue")
    return answered(sentences(NO_VALUE, next), [
      { type: "question.closed", questionId: question.id, outcome: "denied" },
    ]);
  const [act] = question.acts ?? [];
  // Nothing was said that could be recorded: our question is simply dropped.
  if (question.wants !== undefined)
    return answered(sentences("Left open", next), [
      { type: "question.closed", questionId: question.id, outcome: "denied" },
    ]);
  if (act?.kind === "strike")
    return answered(sentences("Left as it was", next), [
      { type: "question.closed", questionId: question.id, outcome: "denied" },
    ]);
  const left = act === undefined || act.kind === "record" ? "Not recorded" : "Not done";
  return answered(sentences(left, next ?? "Say it again"), [
    { type: "question.closed", questionId: question.id, outcome: "denied" },
  ]);
}

/** Heard as one value of one vital, whatever its number: a bare number has only one place to go. */
const oneSlot = ({ candidates }: Question): boolean =>
  candidates.every((c) => c.statement.vitals.length === 1) &&
  new Set(candidates.flatMap((c) => c.statement.vitals.map((v) => v.code))).size === 1;

/** The statement in doubt with another number in the place of the doubtful one; nothing where that place is not known. */
function restated(
  question: Question,
  number: SaidNumber,
  unit: SaidUnit | undefined,
): readonly SaidVital[] | undefined {
  const [doubtful, ...others] = question.about;
  if (doubtful === undefined) return undefined;
  const [first] = question.candidates;
  if (first === undefined) return others.length === 0 ? [inSlot(doubtful, number, unit)] : undefined;
  // Where the sound left the doubt, all of it is in doubt, not one number.
  if ((question.reason === "acoustic" || question.reason === "ambiguous") && !oneSlot(question)) return undefined;
  const kept = (v: VitalValue) => (question.reason === "unit" ? undefined : inheritedUnit(v));
  return first.statement.vitals.map((v) =>
    v.code === doubtful ? withNumber(v, number, unit ?? kept(v)) : asSaidVital(v),
  );
}

/** A number said with a unit belongs to a question about a vital that has this unit. */
const takesUnit = ({ about: [doubtful] }: Question, unit: SaidUnit | undefined): boolean =>
  unit === undefined || (doubtful !== undefined && toCanonical(doubtful, 1, unit).ok);

/**
 * A bare number: the value of a step that waits for it. Said while a question of values waits, it picks the candidate with
 * that number, or states the value anew.
 * In doubt over a sound-alike only digits are an answer: the same doubtful word again settles nothing.
 */
export function decideNumber(
  context: AppContext,
  log: CaseState,
  number: SaidNumber,
  unit: SaidUnit | undefined,
  source: Source,
  nowMs: number,
): Decision {
  const forStep = decideStepNumber(context, log, number, unit, source, nowMs);
  if (forStep !== undefined) return forStep;
  const [newest] = log.questions;
  if (newest === undefined) return ignored;
  const wanted = unit === undefined ? answerWant(context, log, number, source, nowMs) : undefined;
  if (wanted !== undefined) return wanted;
  const ofValues = log.questions.filter(({ acts, wants }) => acts === undefined && wants === undefined);
  const question = ofValues.find((q) => takesUnit(q, unit));
  if (question === undefined) return refused(newest.prompt);
  const doubtful = source.by !== "browser" && soundAlikes(number.words.split(" ")).length > 0;
  const [chosen, ...alike] = question.candidates.filter((c) => c.number === number.value);
  if (chosen !== undefined && unit === undefined) {
    if (alike.length > 0) return refused(question.prompt);
    return doubtful && question.candidates.length > 1
      ? refused(`Say the digits: ${question.candidates.map((c) => c.choose).join(", or ")}?`)
      : take(log, question, chosen);
  }
  // The answer to an older question, it seems: not to be put into the slot of this one.
  const others = ofValues.filter((q) => q !== question);
  if (others.some((q) => q.candidates.some((c) => c.number === number.value))) return refused("Say which value.");
  const items = restated(question, number, unit);
  if (items === undefined) return refused(question.prompt);
  return decideVitals(context, log, items, source, nowMs, { correction: false });
}

/** A bare unit answers the newest question of units that offers it; no other question can be meant. */
export function decideUnit(context: AppContext, log: CaseState, unit: SaidUnit, nowMs: number): Decision {
  const ofUnits = log.questions.filter((q) => q.reason === "unit");
  for (const question of ofUnits) {
    const chosen = question.candidates.find((c) => c.statement.vitals.some((v) => v.said.unit === unit));
    if (chosen !== undefined) return takeWithUnit(context, log, question, chosen, nowMs);
  }
  const [newest] = ofUnits;
  return newest === undefined ? ignored : refused(newest.prompt);
}
