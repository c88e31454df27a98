import type { IDBPTransaction } from "idb";
import { fail, ok, type Result } from "../../core/result.ts";
import type { Fact } from "../../log/facts.ts";
import type { StoreError } from "../../app/ports.ts";
import type { FactRecord, FactSchema, Place } from "./factDatabase.ts";

type Write = IDBPTransaction<FactSchema, ["facts"], "readwrite">;

/** A strict commit takes tens of milliseconds. */
const LIMIT_MS = 10_000;

/**
 * Writes facts in one transaction: all of them or none.
 *
 * Nothing is awaited in here but the database, or the transaction would end by itself half-way.
 *
 * @param from where the first one goes; undefined before any case, when it must be the fact that opens one.
 * @returns    where the next one goes, once the commit is reported.
 * Errors: `quota-exceeded`; `write-failed` with the database's reason, or after the time limit. Nothing is then kept.
 */
export async function writeFacts(
  write: Write,
  facts: readonly Fact[],
  from: Place | undefined,
): Promise<Result<Place, StoreError>> {
  const committed = write.done;
  committed.catch(() => undefined); // looked at below; a failed add must not leave it unheard
  const timer = setTimeout(() => abort(write), LIMIT_MS);
  try {
    const next = await addAll(write, facts, from);
    await committed;
    return ok(next);
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

async function addAll(write: Write, facts: readonly Fact[], from: Place | undefined): Promise<Place> {
  const store = write.objectStore("facts");
  let place = from;
  for (const fact of facts) {
    let opening: Pick<FactRecord, "opening"> = {};
    if (fact.type === "case.opened") {
      const newest = await store.index("opening").openKeyCursor(null, "prev");
      opening = { opening: (newest?.key ?? 0) + 1 };
      place = { caseId: fact.caseId, n: 0 };
    }
    if (place === undefined) throw new Error("no case is open");
    await store.add({ ...place, fact, ...opening });
    place = { caseId: place.caseId, n: place.n + 1 };
  }
  if (place === undefined) throw new Error("no case is open");
  return place;
}

function abort(write: Write): void {
  try {
    write.abort();
  } catch {
    // It has ended already, committed or aborted: `committed` says which.
  }
}

const nameOf = (thrown: unknown): string => (thrown instanceof Error ? thrown.name : "");
