import { checkEntries, type CheckedEntries } from "../../log/chain/checkEntries.ts";
import type { Sha256Hex } from "../../log/chain/sealFacts.ts";
import type { FactDatabase, FactRecord } from "./factDatabase.ts";
import { sealOldRecords } from "./sealOldRecords.ts";

/** Every place that a case can have. */
export const placesOf = (caseId: string): IDBKeyRange => IDBKeyRange.bound([caseId, 0], [caseId, Infinity]);

export type ReadCase = CheckedEntries & {
  /** As they are stored, good and bad. */
  readonly records: readonly FactRecord[];
};

/** Reads one case and holds it against its chain. What an older version wrote without one is put into a chain first. */
export async function readCase(database: FactDatabase, caseId: string, sha256Hex: Sha256Hex): Promise<ReadCase> {
  const stored = await database.getAll("facts", placesOf(caseId));
  const records = await sealOldRecords(database, stored, sha256Hex);
  return { records, ...(await checkEntries(caseId, records, sha256Hex)) };
}

/** The case that was opened last; undefined where there has never been one. */
export async function newestCaseId(database: FactDatabase): Promise<string | undefined> {
  const newest = await database.transaction("facts").store.index("opening").openKeyCursor(null, "prev");
  return newest?.primaryKey[0];
}
