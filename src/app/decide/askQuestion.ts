import type { CaseState } from "../../log/caseState.ts";
import type { NewFact, Question } from "../../log/facts.ts";
import type { Decision } from "./decision.ts";
import type { Source } from "./recordStatement.ts";

export type Asking = { readonly prompt: string; readonly source: Source; readonly nowMs: number };

/**
 * Asks aloud about something that is no value of a reading: what is to be done or recorded, or what is wanted.
 *
 * @param before facts that go into the log first.
 */
export function askQuestion(
  log: CaseState,
  { prompt, source, nowMs }: Asking,
  what: Pick<Question, "reason" | "acts" | "wants">,
  before: readonly NewFact[],
): Decision {
  const question: Question = {
    id: `question-${log.factCount + before.length}`,
    about: [],
    prompt,
    ...source,
    askedAtMs: nowMs,
    strikes: [],
    candidates: [],
    ...what,
  };
  return {
    facts: [...before, { type: "question.asked", question }],
    outcome: "asked",
    reply: { kind: "words", text: prompt },
  };
}
