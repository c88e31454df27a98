import type { HeardBy } from "../../log/heardBy.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { statementsFromLatest, type Statement } from "../statements.ts";
import { markup, section, table, type Html, type Piece } from "./html.ts";
import type { Strikable } from "./struck.ts";
import type { Times } from "./times.ts";

const WAYS: Readonly<Record<HeardBy, string>> = {
  typed: "typed",
  listener: "spoken",
  browser: "spoken, browser’s recogniser",
};

function statedCell({ id, entries, asked }: Statement, strike: Strikable): Piece {
  if (asked !== undefined) return strike(id, markup`<b>${asked.outcome}</b>; asked: ${asked.prompt}`);
  return entries.map((entry, i) => [i === 0 ? "" : markup`<br>`, strike(entry.id, entry.text)]);
}

const heardCell = ({ heard }: Statement): Piece =>
  heard && markup`<bdi>“${heard.words}”</bdi>${heard.by === undefined ? undefined : `, ${WAYS[heard.by]}`}`;

/** Everything that was stated, one row for each breath, in the order in which it was said. */
export function statementSection({ facts, protocol }: RecordedCase, times: Times, strike: Strikable): Html {
  const statements = [...statementsFromLatest(facts, protocol)].reverse();
  return section(
    "statements",
    "Everything that was stated",
    table(
      "In the order in which it was said; struck entries and those not confirmed count for nothing",
      ["Time", "Stated", "Heard as"],
      statements.map((statement) => [times.time(statement.atMs), statedCell(statement, strike), heardCell(statement)]),
    ),
  );
}
