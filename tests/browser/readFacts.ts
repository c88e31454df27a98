import type { Page } from "playwright-core";
import type { Fact } from "../../src/log/facts.ts";

/**
 * What the page has made durable, oldest first: read from the browser's database, not from the page's memory.
 * Empty before the page has made its database, which this never makes in its stead.
 */
export function readFacts(page: Page): Promise<readonly Fact[]> {
  return page.evaluate(
    () =>
      new Promise<Fact[]>((resolve, reject) => {
        const fail = (request: IDBRequest) => () => reject(new Error(String(request.error)));
        const opening = indexedDB.open("tragus");
        let isNew = false;
        opening.onupgradeneeded = () => {
          isNew = true;
          opening.transaction?.abort();
        };
        opening.onerror = () => (isNew ? resolve([]) : fail(opening)());
        opening.onsuccess = () => {
          const database = opening.result;
          const reading = database.transaction("facts").objectStore("facts").getAll() as IDBRequest<{ fact: Fact }[]>;
          reading.onerror = fail(reading);
          reading.onsuccess = () => {
            database.close();
            resolve(reading.result.map((record) => record.fact));
          };
        };
      }),
  );
}
