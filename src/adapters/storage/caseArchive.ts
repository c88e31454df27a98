import { fail, ok, type Result } from "../../core/result.ts";
import type { CaseArchive, CaseInStore, StoreError } from "../../app/ports.ts";
import type { LogEntry } from "../../log/chain/entry.ts";
import type { Sha256Hex } from "../../log/chain/sealFacts.ts";
import { readFact } from "../../log/upgrade/readFact.ts";
import type { FactDatabase } from "./factDatabase.ts";
import { eraseCopy } from "./secondCopy.ts";
import type { Among } from "./writeEntries.ts";
import { placesOf, readCase } from "./readCase.ts";

type WithDatabase = <T>(
  work: (open: FactDatabase) => Promise<Result<T, StoreError>>,
  kind: "unavailable" | "write-failed",
) => Promise<Result<T, StoreError>>;

/** One row of the list of cases, from its first and its last entry alone: none of the others is read. */
async function rowOf(database: FactDatabase, caseId: string): Promise<CaseInStore> {
  const [first] = await database.getAll("facts", placesOf(caseId), 1);
  const last = await database.transaction("facts").store.openCursor(placesOf(caseId), "prev");
  const opened = readFact(first?.fact);
  const ended = readFact(last?.value.fact);
  const opening = opened.ok && opened.value.type === "case.opened" ? opened.value : undefined;
  return {
    caseId,
    ...(opening === undefined ? {} : { label: opening.label, rehearsal: opening.rehearsal, openedAtMs: opening.atMs }),
    isClosed: ended.ok && ended.value.type === "case.closed",
    entries: (last?.value.n ?? -1) + 1,
  };
}

/**
 * All cases in the store, open and closed.
 *
 * @param withDatabase carries out with an open connection, and makes errors of what it throws.
 * @param write        adds entries in one strict transaction.
 */
export function archiveOf(
  withDatabase: WithDatabase,
  write: (entries: readonly LogEntry[], among: Among) => Promise<Result<void, StoreError>>,
  sha256Hex: Sha256Hex,
): CaseArchive & { readonly erase: (caseId: string) => Promise<Result<void, StoreError>> } {
  return {
    cases: () =>
      withDatabase(async (open) => {
        const rows: CaseInStore[] = [];
        const openings = await open.getAllKeysFromIndex("facts", "opening");
        for (const [caseId] of openings.toReversed()) rows.push(await rowOf(open, caseId));
        return ok(rows);
      }, "unavailable"),
    read: (caseId) =>
      withDatabase(async (open) => {
        const { records, facts, faults } = await readCase(open, caseId, sha256Hex);
        const entries = records.map(({ opening: _opening, ...entry }) => entry);
        return ok({ entries, facts, faults });
      }, "unavailable"),
    add: ({ caseId, entries }) =>
      withDatabase(async (open) => {
        if ((await open.count("facts", placesOf(caseId))) > 0) return fail({ kind: "case-exists" });
        return write(entries, "oldest");
      }, "write-failed"),
    erase: (caseId) =>
      withDatabase(async (open) => {
        await eraseCopy(open, caseId);
        return ok(undefined);
      }, "write-failed"),
  };
}
