import type { Fact } from "../../log/facts.ts";
import { statementsFromLatest, type Statement } from "../../export/statements.ts";
import type { Times } from "../../export/printed/times.ts";
import type { Protocol } from "../../protocol/protocol.ts";

/** What was said in one breath, as it stands in the record now. */
export type EntryRow = {
  readonly id: string;
  /** "14:03:22" */
  readonly timeText: string;
  readonly entries: readonly { readonly id: string; readonly text: string; readonly isStruck: boolean }[];
  /** "struck 14:05:10, disregarded"; empty where there is nothing to know. */
  readonly noteText: string;
  /** It is only in memory so far. */
  readonly notSaved: boolean;
  /** The words it was heard as; empty where nobody said it. */
  readonly heardText: string;
};

export type EntriesView = {
  /** Newest first. */
  readonly rows: readonly EntryRow[];
  /** There are older ones than these. */
  readonly hasOlder: boolean;
  /** More of them were asked for than the latest few. */
  readonly isLong: boolean;
};

/** @param times in the zone of the device, with the day of the opening. */
function entryRow(statement: Statement, times: Times, unsavedIds: ReadonlySet<string>): EntryRow {
  const { id, atMs, entries, asked, heard } = statement;
  const strikes = new Set(entries.flatMap(({ strike }) => (strike === undefined ? [] : [strike])));
  const struck = [...strikes].map(
    (strike) => `struck ${times.time(strike.atMs)}, ${strike.reason}${unsavedIds.has(strike.id) ? " (not saved)" : ""}`,
  );
  return {
    id,
    timeText: times.time(atMs),
    entries: entries.map(({ id: entryId, text, strike }) => ({ id: entryId, text, isStruck: strike !== undefined })),
    noteText: [...(asked === undefined ? [] : [`${asked.outcome}; asked: ${asked.prompt}`]), ...struck].join("; "),
    notSaved: [id, ...entries.map((entry) => entry.id)].some((each) => unsavedIds.has(each)),
    heardText: heard === undefined ? "" : `“${heard.words}”`,
  };
}

export type EntriesParts = {
  /** Of the open case, oldest first. */
  readonly facts: readonly Fact[];
  /** Ids of those that are still to be written. */
  readonly unsavedIds: ReadonlySet<string>;
  readonly protocol: Protocol;
  readonly times: Times;
  /** How many rows, the newest ones. */
  readonly atMost: number;
};

/** The entries of the open case with what has become of each: struck ones stay, struck. */
export function viewEntries({ facts, unsavedIds, protocol, times, atMost }: EntriesParts): Omit<EntriesView, "isLong"> {
  const rows: EntryRow[] = [];
  for (const statement of statementsFromLatest(facts, protocol)) {
    if (rows.length === atMost) return { rows, hasOlder: true };
    rows.push(entryRow(statement, times, unsavedIds));
  }
  return { rows, hasOlder: false };
}
