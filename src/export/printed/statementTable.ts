import type { Fact, Question } from "../../log/facts.ts";
import type { HeardBy } from "../../log/heardBy.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { markup, section, table, type Html, type Piece } from "./html.ts";
import { statementText } from "./statementText.ts";
import type { Strikable } from "./struck.ts";
import type { Times } from "./times.ts";

const WAYS: Readonly<Record<HeardBy, string>> = {
  typed: "typed",
  listener: "spoken",
  browser: "spoken, browser’s recogniser",
};

/** What became of a statement that was asked back and never entered the record. */
const OUTCOMES = {
  unconfirmed: "NOT CONFIRMED, does not count",
  denied: "denied, does not count",
  restated: "said anew, does not count",
  open: "NOT YET CONFIRMED, does not count",
} as const;

type Closing = Extract<Fact, { readonly type: "question.closed" }>;
type Row = { readonly atMs: number; readonly stated: Piece; readonly heard: Piece };

const heardCell = (words: string, by?: HeardBy): Html =>
  markup`<bdi>“${words}”</bdi>${by === undefined ? undefined : `, ${WAYS[by]}`}`;

const wordsOf = (fact: Fact): Html | undefined =>
  "heard" in fact ? heardCell(fact.heard, "by" in fact ? fact.by : undefined) : undefined;

/** A question that led to no entry, at the time when it was asked; what was affirmed stands in a row of its own. */
function questionRow(
  { prompt, heard, by, askedAtMs }: Question,
  outcome: Closing["outcome"] | "open",
  marked: (text: Piece) => Html,
): Row | undefined {
  if (outcome === "affirmed") return undefined;
  return {
    atMs: askedAtMs,
    stated: marked(markup`<b>${OUTCOMES[outcome]}</b>; asked: ${prompt}`),
    heard: heardCell(heard, by),
  };
}

/** One row for each breath: what was stated in it, and the words it was heard as. */
function rowsOf({ facts, protocol }: RecordedCase, strike: Strikable): readonly Row[] {
  const closings = facts.filter((fact) => fact.type === "question.closed");
  const outcomes = new Map(closings.map(({ questionId, outcome }) => [questionId, outcome]));
  const rows: Row[] = [];
  let reading: string | undefined;
  for (const fact of facts) {
    const id = "readingId" in fact ? fact.readingId : undefined;
    const goesOn = id !== undefined && id === reading;
    reading = id;
    if (fact.type === "question.asked") {
      const row = questionRow(fact.question, outcomes.get(fact.question.id) ?? "open", (text) => strike(fact.id, text));
      if (row !== undefined) rows.push(row);
      continue;
    }
    const text = statementText(fact, protocol);
    if (text === undefined) continue;
    const stated = strike(fact.id, text);
    const last = rows.at(-1);
    if (goesOn && last !== undefined) rows.splice(-1, 1, { ...last, stated: markup`${last.stated}<br>${stated}` });
    else rows.push({ atMs: fact.atMs, stated, heard: wordsOf(fact) });
  }
  return rows;
}

/** Everything that was stated, in the order in which it was said. */
export function statementSection(recorded: RecordedCase, times: Times, strike: Strikable): Html {
  return section(
    "statements",
    "Everything that was stated",
    table(
      "In the order in which it was said; struck entries and those not confirmed count for nothing",
      ["Time", "Stated", "Heard as"],
      rowsOf(recorded, strike).map(({ atMs, stated, heard }) => [times.time(atMs), stated, heard]),
    ),
  );
}
