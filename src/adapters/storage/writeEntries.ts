import type { IDBPTransaction } from "idb";
import { fail, ok, type Result } from "../../core/result.ts";
import type { LogEntry } from "../../log/chain/entry.ts";
import type { StoreError } from "../../app/ports.ts";
import type { FactDatabase, FactRecord, FactSchema } from "./factDatabase.ts";
import { placesOf } from "./readCase.ts";

type Write = IDBPTransaction<FactSchema, ["facts"], "readwrite">;

/** Where a case that is opened by these goes: the newest is the one that is resumed, so one from a file is the oldest. */
export type Among = "newest" | "oldest";

/** A strict commit takes tens of milliseconds. */
const LIMIT_MS = 10_000;

/**
 * Writes entries in one transaction: all of them or none. Settles once the commit is reported.
 *
 * Nothing is awaited in here but the database, or the transaction would end by itself half-way.
 *
 * Errors: `quota-exceeded`; `write-failed` with the database's reason, or after the time limit. Nothing is then kept.
 */
export async function writeEntries(
  write: Write,
  entries: readonly LogEntry[],
  among: Among,
): Promise<Result<void, StoreError>> {
  const committed = write.done;
  committed.catch(() => undefined); // looked at below; a failed add must not leave it unheard
  const timer = setTimeout(() => abort(write), LIMIT_MS);
  try {
    await addAll(write, entries, among);
    await committed;
    return ok(undefined);
  } catch (thrown) {
    abort(write);
    const reason = await committed.then(
      () => thrown,
      (cause: unknown) => (nameOf(thrown) === "AbortError" ? cause : thrown),
    );
    if (nameOf(reason) === "QuotaExceededError") return fail({ kind: "quota-exceeded" });
    return fail({ kind: "write-failed", detail: String(reason) });
  } finally {
    clearTimeout(timer);
  }
}

/** Those that stand there no more. */
export async function entriesMissing(open: FactDatabase, kept: readonly LogEntry[]): Promise<readonly LogEntry[]> {
  const [first] = kept;
  if (first === undefined) return [];
  const places = new Set((await open.getAllKeys("facts", placesOf(first.caseId))).map(([, n]) => n));
  return kept.filter(({ n }) => !places.has(n));
}

async function addAll(write: Write, entries: readonly LogEntry[], among: Among): Promise<void> {
  const store = write.objectStore("facts");
  for (const entry of entries) {
    let opening: Pick<FactRecord, "opening"> = {};
    if (entry.n === 0) {
      const outermost = await store.index("opening").openKeyCursor(null, among === "newest" ? "prev" : "next");
      opening = { opening: (outermost?.key ?? 0) + (among === "newest" ? 1 : -1) };
    }
    await store.add({ ...entry, ...opening });
  }
}

function abort(write: Write): void {
  try {
    write.abort();
  } catch {
    // It has ended already, committed or aborted: `committed` says which.
  }
}

const nameOf = (thrown: unknown): string => (thrown instanceof Error ? thrown.name : "");
