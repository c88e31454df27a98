import { openDB, type DBSchema, type IDBPDatabase } from "idb";
import { fail, ok, type Result } from "../../core/result.ts";
import type { ProtocolStore, ProtocolStoreError, StoredProtocol } from "../../app/ports.ts";

interface ProtocolSchema extends DBSchema {
  chosen: { key: "protocol"; value: StoredProtocol };
}

const KEY = "protocol";
/** Each call takes milliseconds; browsers have been seen never to answer. */
const LIMIT_MS = 5_000;

/** The store of the running page. */
export const protocolStoreInPage = (): ProtocolStore => createIndexedDbProtocolStore("tragus-protocol");

const connect = (name: string): Promise<IDBPDatabase<ProtocolSchema>> =>
  openDB<ProtocolSchema>(name, 1, {
    upgrade: (database) => void database.createObjectStore("chosen"),
    blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
  });

function inTime<T>(work: Promise<T>): Promise<T> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const limit = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error("the browser's database does not answer")), LIMIT_MS);
  });
  return Promise.race([work, limit]).finally(() => clearTimeout(timer));
}

/** Stored by this app or a newer one, or by nobody knows whom: only what has the right shape is handed on. */
function readStored(stored: unknown): StoredProtocol {
  const { file, trustedKey } = (stored ?? {}) as { [K in keyof StoredProtocol]: unknown };
  const { name, bytes, signature } = (file ?? {}) as Readonly<Record<string, unknown>>;
  const isFile = typeof name === "string" && bytes instanceof Uint8Array;
  return {
    ...(isFile ? { file: { name, bytes, ...(signature instanceof Uint8Array ? { signature } : {}) } } : {}),
    ...(typeof trustedKey === "string" ? { trustedKey } : {}),
  };
}

/**
 * Keeps the chosen protocol file in IndexedDB, in a database of its own: the record of a case has nothing to do with it.
 * A connection is opened for each call; there are few.
 *
 * Errors: `unavailable`: it cannot be read; `write-failed`: nothing has changed in the store.
 */
export function createIndexedDbProtocolStore(name: string): ProtocolStore {
  const use = async <T>(
    work: (database: IDBPDatabase<ProtocolSchema>) => Promise<T>,
    kind: ProtocolStoreError["kind"],
  ): Promise<Result<T, ProtocolStoreError>> => {
    let database: IDBPDatabase<ProtocolSchema> | undefined;
    let givenUp = false;
    try {
      const opening = connect(name);
      // One that comes after its time limit would block later versions for ever.
      opening.then((late) => givenUp && late.close()).catch(() => undefined);
      database = await inTime(opening);
      return ok(await inTime(work(database)));
    } catch (thrown) {
      givenUp = true;
      return fail({ kind, detail: thrown instanceof Error ? thrown.message : String(thrown) });
    } finally {
      database?.close();
    }
  };
  return {
    load: () => use(async (database) => readStored(await database.get("chosen", KEY)), "unavailable"),
    save: (stored) => use(async (database) => void (await database.put("chosen", stored, KEY)), "write-failed"),
    clear: () => use((database) => database.delete("chosen", KEY), "write-failed"),
  };
}
