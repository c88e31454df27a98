import type { CaseState } from "../../../log/caseState.ts";
import type { AffirmedFact, NewFact, Question, RateWanted, Want } from "../../../log/facts.ts";
import { askQuestion, type Asking } from "../askQuestion.ts";
import type { Decision } from "../decision.ts";

/** What a question of care is about: a new one about the same takes the place of the old one. */
function topicOf({ acts = [], wants }: Question): string | undefined {
  const [act] = acts;
  if (act?.kind === "record") return topicOfFacts(act.facts);
  if (wants === undefined) return undefined;
  return topicOfWant(wants);
}

function topicOfWant(wants: Want): string {
  if (wants.kind === "caseLabel") return "case";
  return wants.kind === "stepValue" ? `step ${wants.stepId}` : wants.drugId;
}

function subjectOf(fact: Pick<AffirmedFact, "type"> & { readonly drugId?: string; readonly fluidId?: string }): string {
  return fact.drugId ?? fact.fluidId ?? fact.type;
}

/** What is recorded together is about the first of it. */
const topicOfFacts = ([first]: readonly AffirmedFact[]): string => (first === undefined ? "" : subjectOf(first));

/** Closes the questions about this drug, fluid or measure: it was said anew. */
export const closeAbout = (log: CaseState, topic: string): readonly NewFact[] =>
  log.questions.flatMap((q) =>
    topicOf(q) === topic ? [{ type: "question.closed", questionId: q.id, outcome: "restated" } as const] : [],
  );

function ask(
  log: CaseState,
  topic: string,
  asking: Asking,
  what: Pick<Question, "acts" | "wants">,
  before: readonly NewFact[],
): Decision {
  return askQuestion(log, asking, { reason: "always-confirm", ...what }, [...before, ...closeAbout(log, topic)]);
}

/**
 * Reads a statement back and waits for "affirm": until then it is no fact, and when nobody answers it stays in the record
 * as an unconfirmed question.
 *
 * @param before  facts that go into the log with the question.
 * @param forRate a rate that waits for this concentration.
 */
export const askToRecord = (
  log: CaseState,
  facts: readonly AffirmedFact[],
  asking: Asking,
  before: readonly NewFact[] = [],
  forRate?: RateWanted,
): Decision =>
  ask(log, topicOfFacts(facts), asking, { acts: [{ kind: "record", facts, ...(forRate && { forRate }) }] }, before);

/** Asks for what is missing: a concentration, an amount, a rate, a unit, the value of a step. */
export const askFor = (log: CaseState, wants: Want, asking: Asking, before: readonly NewFact[] = []): Decision =>
  ask(log, topicOfWant(wants), asking, { wants }, before);
