import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { enter, labelOf, ready, saved, savedFacts, spoken, valuesIn } from "../caseInPage.ts";
import { openPage, type OpenedPage } from "../openPage.ts";
import { serveBuild, type Served } from "../serveBuild.ts";

const SOON = { timeout: 20_000 };

type Copy = "first" | "second";

/**
 * In one copy of the record: all that stands there, as text; and the reading with this value made another, where that is
 * asked for, as a disk or a hand does that knows nothing of the chain.
 */
const lookInto = (page: Page, copy: Copy, change?: readonly [value: number, other: number]): Promise<string> =>
  page.evaluate(
    async ([place, wanted]) => {
      type Buckets = { open(name: string): Promise<{ readonly indexedDB: IDBFactory }> };
      const { storageBuckets } = navigator as Navigator & { readonly storageBuckets: Buckets };
      const factory = place === "first" ? indexedDB : (await storageBuckets.open("second-copy")).indexedDB;
      return new Promise<string>((resolve, reject) => {
        const opening = factory.open("tragus");
        // One that is not there is not made here: the app would find it without its stores.
        let isNew = false;
        opening.onupgradeneeded = () => {
          isNew = true;
          opening.transaction?.abort();
        };
        opening.onerror = () => (isNew ? resolve("") : reject(new Error("no such copy")));
        opening.onsuccess = () => {
          const work = opening.result.transaction("facts", "readwrite");
          const store = work.objectStore("facts");
          const reading = store.getAll() as IDBRequest<{ fact: { value?: number } }[]>;
          reading.onsuccess = () => {
            for (const record of reading.result) {
              if (wanted === undefined || record.fact.value !== wanted[0]) continue;
              store.put({ ...record, fact: { ...record.fact, value: wanted[1] } });
            }
          };
          work.oncomplete = () => {
            opening.result.close();
            resolve(JSON.stringify(reading.result));
          };
        };
      });
    },
    [copy, change] as const,
  );

describe("a record in two copies and two tabs", () => {
  let served: Served;
  let opened: OpenedPage;
  let page: Page;

  const reload = async (): Promise<void> => {
    await page.reload();
    await page.locator(".save", { hasText: /Case resumed|Saved|could not be read/u }).waitFor({ timeout: 60_000 });
  };
  const unread = (): Promise<number> => page.getByText(/could not be read/u).count();

  beforeAll(async () => {
    served = await serveBuild();
    opened = await openPage({ browserPath: inject("browserPath"), origin: served.origin });
    page = opened.page;
    await ready(page);
    await enter(page, "map ninety five", "recorded");
    await enter(page, "heart rate seventy one", "recorded");
  });

  afterAll(async () => {
    await opened.close();
    await served.close();
  });

  it.each(["first", "second"] as const)("is mended where the last entry of the %s copy is bad", async (copy) => {
    await lookInto(page, copy, [71, 17]);
    expect(await lookInto(page, copy)).toContain('"value":17');
    await reload();
    expect(await unread()).toBe(0);
    expect(valuesIn(await savedFacts(page))).toEqual(["map 95", "hr 71"]);
    for (const each of ["first", "second"] as const) {
      expect(await lookInto(page, each)).toContain('"value":71');
      expect(await lookInto(page, each)).not.toContain('"value":17');
    }
  });

  it("is written whole into a copy that was lost", async () => {
    await page.evaluate(async () => {
      type Buckets = { delete(name: string): Promise<void> };
      await (navigator as Navigator & { readonly storageBuckets: Buckets }).storageBuckets.delete("second-copy");
    });
    await reload();
    await enter(page, "sats ninety six", "recorded");
    expect(await lookInto(page, "second")).toMatch(/"value":71[^]*"value":96/u);
    expect(valuesIn(await savedFacts(page))).toEqual(["map 95", "hr 71", "spo2 96"]);
  });

  it("sets an entry aside that is bad in both, says so in plain words, and goes on with the rest", async () => {
    const label = await labelOf(page);
    await lookInto(page, "first", [96, 69]);
    await lookInto(page, "second", [96, 69]);
    await reload();
    await page.locator(".alert", { hasText: "Part of the record could not be read" }).first().waitFor();
    await spoken(page, /Part of the record could not be read\. Check it against your notes\./u);
    expect(await labelOf(page)).toBe(label);
    expect(await page.locator(".tiles").innerText()).toMatch(/71 \/min[^]*SpO2\s+not yet recorded/u);
    await enter(page, "glucose six", "recorded");
    // It stays where it was, as it was.
    expect(await lookInto(page, "first")).toContain('"value":69');
    const vitals = (await saved(page, "CSV", 3)).get("vitals.csv") ?? "";
    expect(vitals).toMatch(/71/u);
    expect(vitals).not.toMatch(/\b69\b/u);
    expect((await saved(page, "Save as JSON", 1)).get("record.json")).toContain('"value":69');
    // And is told of again.
    await reload();
    await page.locator(".alert", { hasText: "Part of the record could not be read" }).first().waitFor();
    expect(await page.locator(".tiles").innerText()).toMatch(/6(\.0)? mmol/u);
  });

  it("is read only in a second tab, which takes over when the first is closed and not when it is reloaded", async () => {
    await enter(page, "new case", "asked");
    const before = await labelOf(page);
    await page.getByRole("textbox", { name: "Type instead of speaking" }).fill("affirm");
    await page.keyboard.press("Enter");
    await expect.poll(() => labelOf(page), SOON).not.toBe(before);
    const label = await labelOf(page);
    await enter(page, "map eighty five", "recorded");
    const second = await opened.context.newPage();
    await second.goto(served.origin, { waitUntil: "load" });
    await second.locator(".alert", { hasText: "Another tab keeps the record." }).first().waitFor({ timeout: 60_000 });
    await enter(second, "heart rate forty", "refused");
    await page.bringToFront();
    await enter(page, "sats ninety one", "recorded");

    await reload();
    await enter(page, "glucose seven", "recorded");
    expect(await second.getByText("Another tab keeps the record.").count()).toBeGreaterThan(0);

    await page.close();
    page = second;
    await page.locator(".save", { hasText: "Case resumed" }).waitFor({ timeout: 60_000 });
    expect(await labelOf(page)).toBe(label);
    expect(await page.getByText("Another tab keeps the record.").count()).toBe(0);
    await enter(page, "temperature thirty seven", "recorded");
    expect(valuesIn(await savedFacts(page))).toEqual(["map 85", "spo2 91", "glucose 7", "temp 37"]);
  });
});
