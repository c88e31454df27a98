import { wrap, type DBSchema, type IDBPDatabase } from "idb";
import { fail, ok, type Result } from "../../core/result.ts";
import type { LogEntry } from "../../log/chain/entry.ts";
import type { StoreError } from "../../app/ports.ts";

/** An entry as it is stored. `opening` is on the first one of a case only and counts cases, so no clock orders them. */
export type FactRecord = LogEntry & { readonly opening?: number };

export interface FactSchema extends DBSchema {
  facts: { key: [caseId: string, n: number]; value: FactRecord; indexes: { opening: number } };
}

export type FactDatabase = IDBPDatabase<FactSchema>;

const SCHEMA_VERSION = 1;
/** Opening takes milliseconds; browsers have been seen never to answer. */
const OPEN_LIMIT_MS = 5_000;

/**
 * Opens, and where needed makes, the database of facts.
 *
 * @param onLost called when the browser or a newer version of the app has taken the connection away.
 * Errors: `unavailable`, with why: no database in this browser or mode, blocked by another tab, or no answer.
 */
export function openFactDatabase(
  factory: IDBFactory,
  name: string,
  onLost: () => void,
): Promise<Result<FactDatabase, StoreError>> {
  return new Promise((resolve) => {
    let settled = false;
    const settle = (result: Result<FactDatabase, StoreError>) => {
      clearTimeout(timer);
      // A connection that comes after its time limit would block later versions for ever.
      if (settled && result.ok) result.value.close();
      settled = true;
      resolve(result);
    };
    const refuse = (detail: string) => settle(fail({ kind: "unavailable", detail }));
    const timer = setTimeout(() => refuse("the browser's database does not answer"), OPEN_LIMIT_MS);
    open(factory, name, onLost, () => refuse("an older version is open in another tab")).then(
      (database) => settle(ok(database)),
      (thrown: unknown) => refuse(String(thrown)),
    );
  });
}

/** Async, so that a browser that throws at once and one that refuses later fail in the same way. */
async function open(
  factory: IDBFactory,
  name: string,
  onLost: () => void,
  onBlocked: () => void,
): Promise<FactDatabase> {
  const request = factory.open(name, SCHEMA_VERSION);
  request.addEventListener("upgradeneeded", () => {
    const facts = request.result.createObjectStore("facts", { keyPath: ["caseId", "n"] });
    facts.createIndex("opening", "opening", { unique: true });
  });
  request.addEventListener("blocked", onBlocked);
  const database = (await wrap(request)) as unknown as FactDatabase;
  // A newer version of the app wants it.
  database.addEventListener("versionchange", () => {
    database.close();
    onLost();
  });
  database.addEventListener("close", onLost);
  return database;
}
