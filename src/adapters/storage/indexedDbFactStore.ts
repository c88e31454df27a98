import { fail, ok, type Result } from "../../core/result.ts";
import type { Fact } from "../../log/facts.ts";
import type { FactStore, StoreError } from "../../app/ports.ts";
import { openFactDatabase, type FactDatabase, type Place } from "./factDatabase.ts";
import { readCase } from "./readCase.ts";
import { becomeSingleWriter, type Locks } from "./singleWriter.ts";
import { writeFacts } from "./writeFacts.ts";

export type FactStoreParts = {
  readonly name: string;
  readonly locks: Locks | undefined;
  /** Asked once not to evict the record when the device runs short; undefined where a browser cannot be asked. */
  readonly storage: Pick<StorageManager, "persist"> | undefined;
};

/** The store of the running page. */
export const factStoreInPage = (): FactStore =>
  createIndexedDbFactStore({ name: "tragus", locks: navigator.locks, storage: navigator.storage });

/**
 * Keeps facts in IndexedDB. `append` settles when the browser reports a strict commit: written through to the disk,
 * as far as the browser can know.
 *
 * Facts are only ever added: one place is never written twice. The open case is the newest one, and a `case.opened`
 * fact starts the next. Calls are carried out one at a time, in the order in which they were made.
 */
export function createIndexedDbFactStore({ name, locks, storage }: FactStoreParts): FactStore {
  let database: FactDatabase | undefined;
  let place: Place | undefined;
  let isWriter = false;
  let queue: Promise<unknown> = Promise.resolve();

  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const turn = queue.then(work);
    queue = turn.catch(() => undefined);
    return turn;
  };

  const connect = async (): Promise<Result<FactDatabase, StoreError>> => {
    if (database !== undefined) return ok(database);
    if (!isWriter) {
      isWriter = await becomeSingleWriter(locks, name);
      if (!isWriter) return fail({ kind: "unavailable", detail: "open in another tab" });
      void storage?.persist().catch(() => undefined);
    }
    const opened = await openFactDatabase(name, () => (database = undefined));
    if (opened.ok) database = opened.value;
    return opened;
  };

  const load = async (): Promise<Result<readonly Fact[], StoreError>> => {
    const connected = await connect();
    if (!connected.ok) return connected;
    try {
      const stored = await readCase(connected.value);
      place = stored.place;
      const { facts, unreadable } = stored;
      if (unreadable.length === 0) return ok(facts);
      return fail({ kind: "corrupt", detail: unreadable.join("; "), readable: facts.length, facts });
    } catch (thrown) {
      database = undefined;
      return fail({ kind: "unavailable", detail: String(thrown) });
    }
  };

  const append = async (facts: readonly Fact[]): Promise<Result<void, StoreError>> => {
    if (facts.length === 0) return ok(undefined);
    if (place === undefined) {
      const loaded = await load();
      if (!loaded.ok && loaded.error.kind !== "corrupt") return loaded;
    }
    // A connection can be found closed only by using it; a second one is then tried before giving up.
    let written = await tryToWrite(facts);
    if (!written.ok && database === undefined) written = await tryToWrite(facts);
    if (written.ok) place = written.value;
    return written.ok ? ok(undefined) : written;
  };

  const tryToWrite = async (facts: readonly Fact[]): Promise<Result<Place, StoreError>> => {
    const connected = await connect();
    if (!connected.ok) return connected;
    try {
      return await writeFacts(
        connected.value.transaction(["facts"], "readwrite", { durability: "strict" }),
        facts,
        place,
      );
    } catch (thrown) {
      database = undefined;
      return fail({ kind: "write-failed", detail: String(thrown) });
    }
  };

  return { load: () => inTurn(load), append: (facts) => inTurn(() => append(facts)) };
}
