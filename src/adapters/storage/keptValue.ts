import { openDB, type DBSchema, type IDBPDatabase } from "idb";
import { fail, ok, type Result } from "../../core/result.ts";

interface KeptSchema extends DBSchema {
  kept: { key: string; value: unknown };
}

export type KeptValueError = { readonly kind: "unavailable" | "write-failed"; readonly detail: string };

/** Where one value is kept: a database of its own, and the names inside it. */
export type Place = { readonly database: string; readonly store: string; readonly key: string };

export type KeptValue = {
  /** Undefined where nothing is kept. Whatever is found is handed on as it is: its reader must check it. */
  get(): Promise<Result<unknown, KeptValueError>>;
  put(value: unknown): Promise<Result<void, KeptValueError>>;
  remove(): Promise<Result<void, KeptValueError>>;
};

/** Each call takes milliseconds; browsers have been seen never to answer. */
const LIMIT_MS = 5_000;

function inTime<T>(work: Promise<T>): Promise<T> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const limit = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error("the browser's database does not answer")), LIMIT_MS);
  });
  return Promise.race([work, limit]).finally(() => clearTimeout(timer));
}

/**
 * Keeps one value in IndexedDB, in a database of its own: the record of a case has nothing to do with it. A connection is
 * opened for each call; there are few.
 *
 * Errors: `unavailable`: it cannot be read; `write-failed`: nothing has changed in the store. Not for: facts.
 */
export function createKeptValue({ database: name, store, key }: Place): KeptValue {
  // The names inside are the caller's; to the types every such database has one store.
  const inside = store as "kept";
  const connect = (): Promise<IDBPDatabase<KeptSchema>> =>
    openDB<KeptSchema>(name, 1, {
      upgrade: (database) => void database.createObjectStore(inside),
      blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
    });
  const use = async <T>(
    work: (database: IDBPDatabase<KeptSchema>) => Promise<T>,
    kind: KeptValueError["kind"],
  ): Promise<Result<T, KeptValueError>> => {
    let database: IDBPDatabase<KeptSchema> | undefined;
    let givenUp = false;
    try {
      const opening = connect();
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
    get: () => use((database) => database.get(inside, key), "unavailable"),
    put: (value) => use(async (database) => void (await database.put(inside, value, key)), "write-failed"),
    remove: () => use((database) => database.delete(inside, key), "write-failed"),
  };
}
