import { fail, ok, type Result } from "../../core/result.ts";
import type { Fact } from "../../log/facts.ts";
import type { LogEntry, ChainTail } from "../../log/chain/entry.ts";
import { sealFacts, type Sha256Hex } from "../../log/chain/sealFacts.ts";
import type { CaseArchive, FactStore, StoreError } from "../../app/ports.ts";
import { archiveOf } from "./caseArchive.ts";
import { openFactDatabase, type FactDatabase } from "./factDatabase.ts";
import { newestCaseId, readCase } from "./readCase.ts";
import { mendCopies } from "./mendCopies.ts";
import { eraseCopy, makeWhole, secondFactory } from "./secondCopy.ts";
import { becomeSingleWriter, whenNobodyWrites, type Locks } from "./singleWriter.ts";
import { entriesMissing, writeEntries, type Among } from "./writeEntries.ts";

export type FactStoreParts = {
  readonly name: string;
  readonly sha256Hex: Sha256Hex;
  readonly locks: Locks | undefined;
  /** Where a second copy is kept; none where the browser has no second place. */
  readonly secondFactory?: () => Promise<IDBFactory | undefined>;
  /** The browser cleared the record while this page kept it: the open case was written again, and the others are gone. */
  readonly onCleared?: (() => void) | undefined;
  /** Another tab kept the record from this one, and is gone. */
  readonly onFree?: () => void;
};

const strictly = (open: FactDatabase) =>
  open.transaction<["facts"], "readwrite">(["facts"], "readwrite", { durability: "strict" });

/** The store of the running page. */
export const factStoreInPage = (sha256Hex: Sha256Hex, onCleared?: () => void): FactStore & CaseArchive =>
  createIndexedDbFactStore({
    name: "tragus",
    sha256Hex,
    locks: navigator.locks,
    secondFactory,
    onCleared,
    // This page has recorded nothing: begun anew, it takes the case over as it stands now.
    onFree: () => location.reload(),
  });

/**
 * Keeps facts in IndexedDB. `append` settles when the browser reports a strict commit: written through to the disk,
 * as far as the browser can know.
 *
 * Facts are only ever added, chained by their hashes: one place is never written twice. The open case is the newest one,
 * unless it was closed, and a `case.opened` fact starts the next. Calls are carried out one at a time, in the order in
 * which they were made.
 */
export function createIndexedDbFactStore({
  name,
  sha256Hex,
  locks,
  secondFactory: findSecond,
  onCleared,
  onFree,
}: FactStoreParts): FactStore & CaseArchive {
  let database: FactDatabase | undefined;
  let second: FactDatabase | undefined;
  let tail: ChainTail | undefined;
  /** The open case as it stands in the store. A browser may clear that under the page: nothing else has it then. */
  let kept: readonly LogEntry[] = [];
  let isLoaded = false;
  let isWriter: boolean | undefined;
  let queue: Promise<unknown> = Promise.resolve();

  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const turn = queue.then(work);
    queue = turn.catch(() => undefined);
    return turn;
  };

  const askToWrite = async (): Promise<boolean> => {
    const isGranted = await becomeSingleWriter(locks, name);
    if (!isGranted && locks !== undefined && onFree !== undefined) whenNobodyWrites(locks, name, onFree);
    return isGranted;
  };

  const connect = async (): Promise<Result<FactDatabase, StoreError>> => {
    // Once refused it stays so for as long as this page lives: what it knows of the case grows old meanwhile.
    isWriter ??= await askToWrite();
    if (database !== undefined) return ok(database);
    const opened = await openFactDatabase(indexedDB, name, lose);
    if (!opened.ok) return opened;
    if (isWriter) {
      await openSecond(opened.value);
      const restored = await restore(opened.value);
      if (!restored.ok) {
        opened.value.close();
        return restored;
      }
    }
    database = opened.value;
    return opened;
  };

  /** The browser has taken a connection away, and what it led to may be gone: that is not left so until the next entry. */
  const lose = (): void => {
    database?.close();
    second?.close();
    [database, second] = [undefined, undefined];
    void inTurn(connect);
  };

  const restore = async (open: FactDatabase): Promise<Result<void, StoreError>> => {
    const missing = await entriesMissing(open, kept);
    if (missing.length === 0) return ok(undefined);
    const written = await writeBoth(open, missing, "newest");
    if (written.ok) onCleared?.();
    return written;
  };

  /** A second copy is more than is promised: where it fails, there is one. */
  const openSecond = async (first: FactDatabase): Promise<void> => {
    const factory = await findSecond?.();
    const opened = factory && (await openFactDatabase(factory, name, lose));
    second = opened?.ok === true ? opened.value : undefined;
    await withSecond((copy) => makeWhole(first, copy));
  };

  const withSecond = async (work: (copy: FactDatabase) => Promise<unknown>): Promise<void> => {
    try {
      if (second !== undefined) await work(second);
    } catch {
      second = undefined;
    }
  };

  /** Carries out with a connection; one that is found closed only by using it is opened anew the next time. */
  const withDatabase = async <T>(
    work: (open: FactDatabase) => Promise<Result<T, StoreError>>,
    kind: "unavailable" | "write-failed",
  ): Promise<Result<T, StoreError>> => {
    const connected = await connect();
    if (!connected.ok) return connected;
    try {
      return await work(connected.value);
    } catch (thrown) {
      database = undefined;
      return fail({ kind, detail: String(thrown) });
    }
  };

  /** What is left in a copy would come back with it. */
  const eraseSecond = (caseId: string): Promise<Result<void, StoreError>> =>
    withDatabase(async (first) => {
      if (second === undefined) await openSecond(first);
      if (second !== undefined) await eraseCopy(second, caseId);
      else if ((await findSecond?.()) !== undefined)
        return fail({ kind: "write-failed", detail: "the second copy does not open" });
      return ok(undefined);
    }, "write-failed");

  const load = (): Promise<Result<readonly Fact[], StoreError>> =>
    withDatabase(async (open) => {
      await withSecond((copy) => mendCopies(open, copy, sha256Hex));
      const caseId = await newestCaseId(open);
      const stored = caseId === undefined ? undefined : await readCase(open, caseId, sha256Hex);
      isLoaded = true;
      tail = stored?.tail;
      kept = stored?.records.map(({ opening: _opening, ...entry }) => entry) ?? [];
      if (stored === undefined) return isWriter ? ok([]) : fail({ kind: "other-tab", facts: [] });
      const { facts, faults } = stored;
      if (!isWriter) return fail({ kind: "other-tab", facts });
      if (faults.length > 0) return fail({ kind: "corrupt", detail: faults.join(" "), readable: facts.length, facts });
      return ok(facts.at(-1)?.type === "case.closed" ? [] : facts);
    }, "unavailable");

  const append = async (facts: readonly Fact[]): Promise<Result<void, StoreError>> => {
    if (facts.length === 0) return ok(undefined);
    if (!isLoaded) {
      const loaded = await load();
      if (!loaded.ok && loaded.error.kind !== "corrupt") return loaded;
    }
    const sealed = await sealFacts(facts, tail, sha256Hex);
    if (!sealed.ok) return fail({ kind: "write-failed", detail: sealed.error });
    const { entries } = sealed.value;
    // A connection can be found closed only by using it; a second one is then tried before giving up.
    let written = await write(entries);
    if (!written.ok && database === undefined) written = await write(entries);
    if (written.ok) {
      tail = sealed.value.tail;
      const opening = entries.findLastIndex(({ n }) => n === 0);
      kept = opening < 0 ? [...kept, ...entries] : entries.slice(opening);
    }
    return written;
  };

  const write = (entries: readonly LogEntry[], among: Among = "newest"): Promise<Result<void, StoreError>> =>
    withDatabase(async (open) => {
      if (isWriter !== true) return fail({ kind: "other-tab", facts: [] });
      return writeBoth(open, entries, among);
    }, "write-failed");

  const writeBoth = async (
    open: FactDatabase,
    entries: readonly LogEntry[],
    among: Among,
  ): Promise<Result<void, StoreError>> => {
    const written = await writeEntries(strictly(open), entries, among);
    // Not before: no single moment may tear both.
    if (written.ok) await withSecond((copy) => writeEntries(strictly(copy), entries, among));
    return written;
  };

  const archive = archiveOf(withDatabase, write, sha256Hex);
  return {
    load: () => inTurn(load),
    append: (facts) => inTurn(() => append(facts)),
    erase: (caseId) =>
      inTurn(async () => {
        const connected = await connect();
        if (!connected.ok) return connected;
        if (!isWriter) return fail({ kind: "other-tab", facts: [] });
        const isOpen = tail?.caseId === caseId;
        const before = kept;
        // A connection that is opened anew meanwhile would bring it back.
        if (isOpen) kept = [];
        // Before the first: what is left of a case by a crash is all of it.
        const gone = await eraseSecond(caseId);
        const erased = gone.ok ? await archive.erase(caseId) : gone;
        if (!erased.ok) kept = before;
        // The next fact opens a case, or nothing is open.
        else if (isOpen) tail = undefined;
        return erased;
      }),
    cases: () => inTurn(() => archive.cases()),
    read: (caseId) => inTurn(() => archive.read(caseId)),
    add: (record) => inTurn(() => archive.add(record)),
  };
}
