import type { SaidNumber, SaidVital } from "../../language/intent.ts";
import { soundAlikes } from "../../language/numbers/soundAlikes.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { Candidate, NewFact, Question, SaidUnit } from "../../log/facts.ts";
import type { AppContext } from "../context.ts";
import { decideVitals } from "./decideVitals.ts";
import { answered, ignored, refused, type Decision } from "./decision.ts";
import { asSaidVital, inSlot } from "./saidVital.ts";
import { recordStatements, type Source } from "./recordStatement.ts";

/** The prompt proposes its first candidate, so "affirm" is an answer. A question of which of several is not answered by it. */
const proposesOne = (q: Question): boolean =>
  q.candidates.length === 1 ||
  (q.candidates.length > 1 && q.reason !== "unit" && q.reason !== "acoustic" && q.reason !== "ambiguous");

/** The question asked before this one, which now waits again. */
const waitingAfter = (log: CaseState, closed: Question): string | undefined =>
  log.questions.find((q) => q.id !== closed.id)?.prompt;

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

export function decideAffirm(log: CaseState): Decision {
  const [question] = log.questions;
  if (question === undefined) return ignored;
  const [first] = question.candidates;
  if (first !== undefined && proposesOne(question)) return take(log, question, first);
  return refused(question.prompt);
}

export function decideNegative(log: CaseState): Decision {
  const [question] = log.questions;
  if (question === undefined) return ignored;
  const next = waitingAfter(log, question);
  return answered(`Not recorded. ${next ?? "Say it again."}`, [
    { type: "question.closed", questionId: question.id, outcome: "denied" },
  ]);
}

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
  return first.statement.vitals.map((v) =>
    v.code === doubtful ? { ...asSaidVital(v), ...number, unit: unit ?? v.said.unit } : asSaidVital(v),
  );
}

/**
 * A bare number said while a question waits: it picks the candidate with that number, or states the value anew.
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
  const [question] = log.questions;
  if (question === undefined) return ignored;
  const doubtful = source.by !== "browser" && soundAlikes(number.words.split(" ")).length > 0;
  const [chosen, ...alike] = question.candidates.filter((c) => c.number === number.value);
  if (chosen !== undefined && unit === undefined) {
    if (alike.length > 0) return refused(question.prompt);
    return doubtful && question.candidates.length > 1
      ? refused(`Say the digits: ${question.candidates.map((c) => c.choose).join(", or ")}?`)
      : take(log, question, chosen);
  }
  const items = restated(question, number, unit);
  if (items === undefined) return refused(question.prompt);
  return decideVitals(context, log, items, source, nowMs, { correction: false, closes: question });
}

export function decideUnit(log: CaseState, unit: SaidUnit): Decision {
  const [question] = log.questions;
  if (question?.reason !== "unit") return ignored;
  const chosen = question.candidates.find((c) => c.statement.vitals.some((v) => v.said.unit === unit));
  return chosen === undefined ? refused(question.prompt) : take(log, question, chosen);
}
