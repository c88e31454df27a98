import type { Fact } from "../../log/facts.ts";
import type { FactDatabase, FactRecord, Place } from "./factDatabase.ts";
import { readFact } from "./readFact.ts";

export type StoredCase = {
  /** Every fact that can be read, oldest first. */
  readonly facts: readonly Fact[];
  /** One sentence for each record that cannot be used or is missing. */
  readonly unreadable: readonly string[];
  /** After the last record, readable or not; undefined where there has never been a case. */
  readonly place: Place | undefined;
};

/** Reads the newest case. A bad record hides itself alone: what came after it was said too, and is returned. */
export async function readCase(database: FactDatabase): Promise<StoredCase> {
  const read = database.transaction("facts");
  const newest = await read.store.index("opening").openKeyCursor(null, "prev");
  if (newest === null) return { facts: [], unreadable: [], place: undefined };
  const [caseId] = newest.primaryKey;
  const records: readonly FactRecord[] = await read.store.getAll(IDBKeyRange.bound([caseId, 0], [caseId, Infinity]));
  const facts: Fact[] = [];
  const unreadable: string[] = [];
  let n = 0;
  for (const record of records) {
    if (n < record.n)
      unreadable.push(record.n - n === 1 ? `entry ${n} is missing` : `entries ${n} to ${record.n - 1} are missing`);
    const fact = readFact(record.fact);
    if (fact.ok) facts.push(fact.value);
    else unreadable.push(`entry ${record.n} ${fact.error}`);
    n = record.n + 1;
  }
  return { facts, unreadable, place: { caseId, n } };
}
