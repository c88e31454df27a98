import type { Fact, Question } from "../log/facts.ts";
import type { HeardBy } from "../log/heardBy.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { statementText } from "./printed/statementText.ts";

type Closing = Extract<Fact, { readonly type: "question.closed" }>;
export type Strike = Extract<Fact, { readonly type: "entry.struck" }>;
type Heard = { readonly words: string; readonly by: HeardBy | undefined };

/** What became of words that were asked back and never entered the record. */
type NotEntered = Exclude<Closing["outcome"], "affirmed"> | "open";

const NOT_ENTERED: Readonly<Record<NotEntered, string>> = {
  unconfirmed: "NOT CONFIRMED, does not count",
  denied: "denied, does not count",
  restated: "said anew, does not count",
  open: "NOT YET CONFIRMED, does not count",
};

/** One breath: what was stated in it and what has become of that since. */
export type Statement = {
  /** Of the first entry of it. */
  readonly id: string;
  readonly atMs: number;
  /** What was stated; empty where it was asked back and never entered. */
  readonly entries: readonly { readonly id: string; readonly text: string; readonly strike: Strike | undefined }[];
  readonly asked: { readonly outcome: string; readonly prompt: string } | undefined;
  readonly heard: Heard | undefined;
};

const heardOf = (fact: Fact): Heard | undefined =>
  "heard" in fact ? { words: fact.heard, by: "by" in fact ? fact.by : undefined } : undefined;

function askedBack(id: string, { prompt, heard, by, askedAtMs }: Question, outcome: NotEntered): Statement {
  const asked = { outcome: NOT_ENTERED[outcome], prompt };
  return { id, atMs: askedAtMs, entries: [], asked, heard: { words: heard, by } };
}

/** Where the breath begins that ends before `end`. */
function beginningOf(facts: readonly Fact[], end: number): number {
  const breath = (at: number): string | undefined => {
    const fact = facts[at];
    return fact !== undefined && "readingId" in fact ? fact.readingId : undefined;
  };
  let start = end - 1;
  const readingId = breath(start);
  while (readingId !== undefined && start > 0 && breath(start - 1) === readingId) start -= 1;
  return start;
}

/**
 * Everything that was stated, the newest first. It reads no further back than it is asked for: what strikes or closes a
 * statement always comes after it.
 *
 * @param facts of one case, oldest first.
 */
export function* statementsFromLatest(facts: readonly Fact[], protocol: Protocol): Generator<Statement> {
  const strikes = new Map<string, Strike>();
  const closings = new Map<string, Closing["outcome"]>();
  for (let end = facts.length; end > 0;) {
    const start = beginningOf(facts, end);
    const entries: Statement["entries"][number][] = [];
    let first: Fact | undefined;
    for (const fact of facts.slice(start, end).reverse()) {
      if (fact.type === "entry.struck") for (const id of fact.targetIds) strikes.set(id, strikes.get(id) ?? fact);
      if (fact.type === "question.closed") closings.set(fact.questionId, fact.outcome);
      if (fact.type === "question.asked") {
        const outcome = closings.get(fact.question.id) ?? "open";
        // What was affirmed stands as a statement of its own.
        if (outcome !== "affirmed") yield askedBack(fact.id, fact.question, outcome);
      }
      const text = statementText(fact, protocol);
      if (text === undefined) continue;
      first = fact;
      entries.unshift({ id: fact.id, text, strike: strikes.get(fact.id) });
    }
    if (first !== undefined) yield { id: first.id, atMs: first.atMs, entries, asked: undefined, heard: heardOf(first) };
    end = start;
  }
}
