import type { CDPSession, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { enter, ready, savedFacts, spoken, valuesIn } from "../caseInPage.ts";
import { openPage, type OpenedPage } from "../openPage.ts";
import { readFacts } from "../readFacts.ts";
import { serveBuild, type Served } from "../serveBuild.ts";

/** Room for the case, and little more. */
const QUOTA_BYTES = 200_000;

/** Runs in the page: writes into a database beside the record until not even a few hundred bytes have room any more. */
function fillUp(): Promise<void> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open("filler");
    opening.onerror = () => reject(new Error("no filler"));
    opening.onupgradeneeded = () => void opening.result.createObjectStore("bytes", { autoIncrement: true });
    opening.onsuccess = () => {
      let bytes = 65_536;
      const write = (): void => {
        const writing = opening.result.transaction("bytes", "readwrite");
        writing.objectStore("bytes").add(crypto.getRandomValues(new Uint8Array(bytes)));
        writing.oncomplete = write;
        writing.onabort = () => {
          bytes /= 2;
          if (bytes >= 256) return write();
          opening.result.close();
          resolve();
        };
      };
      write();
    };
  });
}

declare global {
  interface Window {
    /** Aborts every write into a database from now on. */
    abortsWrites?: boolean;
  }
}

/** Runs in the page before its own scripts. */
function abortOnDemand(): void {
  const { add } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.add = function (this: IDBObjectStore, value: unknown, key?: IDBValidKey) {
    const request = add.call(this, value, key);
    // After the request was taken: the transaction fails as one does whose disk does not write.
    if (window.abortsWrites) queueMicrotask(() => this.transaction.abort());
    return request;
  } as IDBObjectStore["add"];
}

describe("a record that cannot be written", () => {
  let served: Served;
  let opened: OpenedPage;
  let page: Page;
  let devTools: CDPSession;

  const alerts = (): Promise<string> => page.locator(".urgent").innerText();
  const inFacts = async (words: RegExp): Promise<boolean> => words.test(JSON.stringify(await readFacts(page)));

  beforeAll(async () => {
    served = await serveBuild();
    opened = await openPage({
      browserPath: inject("browserPath"),
      origin: served.origin,
      initScripts: [abortOnDemand],
      prepare: async (empty) => {
        devTools = await empty.context().newCDPSession(empty);
        await devTools.send("Storage.overrideQuotaForOrigin", { origin: served.origin, quotaSize: QUOTA_BYTES });
      },
    });
    page = opened.page;
    await ready(page);
  });

  afterAll(async () => {
    await opened.close();
    await served.close();
  });

  it("for want of room is told aloud, shows what is not saved, and is saved once there is room", async () => {
    await enter(page, "map ninety five", "recorded");
    await page.evaluate(fillUp);
    await enter(page, "heart rate ninety", "not saved");
    expect(await alerts()).toMatch(/Not saved: “heart rate ninety”/u);
    expect(await alerts()).toMatch(/Record not saved: storage is full\. Write it down\./u);
    await spoken(page, /Record not saved: storage is full/u);
    await enter(page, "sats ninety six", "not saved");
    expect(await alerts()).toMatch(/Not saved: “heart rate ninety”, “sats ninety six”/u);
    expect(valuesIn(await readFacts(page))).toEqual(["map 95"]);

    await devTools.send("Storage.overrideQuotaForOrigin", { origin: served.origin });
    await page.locator(".outcome", { hasText: "recorded" }).waitFor({ timeout: 10_000 });
    await expect.poll(alerts, { timeout: 10_000 }).not.toMatch(/not saved/iu);
    expect(valuesIn(await savedFacts(page))).toEqual(["map 95", "hr 90", "spo2 96"]);
    // The voice was not silent meanwhile, and what it said stands there too.
    expect(await inFacts(/Record not saved: storage is full/u)).toBe(true);
  });

  it("because the database aborts is told aloud, and is written whole once it works, in its order", async () => {
    await page.evaluate(() => (window.abortsWrites = true));
    await enter(page, "map eighty five", "not saved");
    expect(await alerts()).toMatch(/Record not saved\. Write it down\./u);
    expect(valuesIn(await readFacts(page))).not.toContain("map 85");
    await page.evaluate(() => (window.abortsWrites = false));
    await page.locator(".outcome", { hasText: "recorded" }).waitFor({ timeout: 10_000 });
    const facts = await savedFacts(page);
    expect(valuesIn(facts)).toEqual(["map 95", "hr 90", "spo2 96", "map 85"]);
    expect(new Set(facts.map(({ id }) => id)).size).toBe(facts.length);
  });

  it("and that the browser clears in mid-case is written again whole, which is said; a reload resumes it", async () => {
    await devTools.send("Storage.clearDataForOrigin", { origin: served.origin, storageTypes: "all" });
    await page.locator(".room", { hasText: "The browser cleared the record." }).waitFor({ timeout: 10_000 });
    await spoken(page, /The browser cleared the record\. This case is written again\./u);
    const values = ["map 95", "hr 90", "spo2 96", "map 85"];
    expect(valuesIn(await readFacts(page))).toEqual(values);
    await enter(page, "temperature thirty seven", "recorded");
    expect(valuesIn(await savedFacts(page))).toEqual([...values, "temp 37"]);
    await page.reload();
    await page.getByText("Case resumed").waitFor({ timeout: 60_000 });
    expect(valuesIn(await savedFacts(page))).toEqual([...values, "temp 37"]);
    expect(await page.locator(".tiles").innerText()).toMatch(/37/u);
  });

  it("whose database another page deletes is written again whole too", async () => {
    const other = await opened.context.newPage();
    await other.goto(`${served.origin}/licences/LICENSE.txt`);
    await other.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const deleting = indexedDB.deleteDatabase("tragus");
          deleting.onsuccess = () => resolve();
          deleting.onerror = () => reject(new Error("not deleted"));
        }),
    );
    await other.close();
    await expect
      .poll(async () => valuesIn(await readFacts(page)), { timeout: 10_000 })
      .toEqual(["map 95", "hr 90", "spo2 96", "map 85", "temp 37"]);
    await enter(page, "glucose six", "recorded");
    expect(valuesIn(await savedFacts(page)).at(-1)).toBe("glucose 6");
  });
});
