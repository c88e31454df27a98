import { readFile } from "node:fs/promises";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { sha256HexHere } from "../../src/adapters/files/webCrypto.ts";
import { readRecordFile } from "../../src/log/recordFile/readRecordFile.ts";
import { labelOf, ready, say } from "./caseInPage.ts";
import { openPage, type OpenedPage } from "./openPage.ts";
import { readFacts } from "./readFacts.ts";
import { serveBuild, type Served } from "./serveBuild.ts";

const HOUR_MS = 3_600_000;

/** Everything in the second copy of the record, which lies apart from the page's other databases. */
const secondCopy = (page: Page): Promise<string> =>
  page.evaluate(async () => {
    type Buckets = { open(name: string): Promise<{ readonly indexedDB: IDBFactory }> };
    const { storageBuckets } = navigator as Navigator & { readonly storageBuckets: Buckets };
    const { indexedDB: factory } = await storageBuckets.open("second-copy");
    return new Promise<string>((resolve, reject) => {
      const opening = factory.open("tragus");
      opening.onerror = () => reject(new Error("no second copy"));
      opening.onsuccess = () => {
        const reading = opening.result.transaction("facts").objectStore("facts").getAll();
        reading.onsuccess = () => {
          opening.result.close();
          resolve(JSON.stringify(reading.result));
        };
      };
    });
  });

describe("the record in the page", () => {
  let served: Served;
  let opened: OpenedPage;
  let page: Page;

  beforeAll(async () => {
    served = await serveBuild();
    opened = await openPage({ browserPath: inject("browserPath"), origin: served.origin });
    page = opened.page;
    await ready(page);
  });

  afterAll(async () => {
    await opened.close();
    await served.close();
  });

  it("runs on when the device's clock is set an hour forward, says so, and goes on rightly after a reload", async () => {
    await say(page, "start apnoea", /Apnoea/u);
    await page.evaluate((byMs) => {
      const now = Date.now.bind(Date);
      Date.now = () => now() + byMs;
    }, HOUR_MS);
    await page
      .getByText(/clock was set forward 60 minutes/u)
      .first()
      .waitFor({ timeout: 60_000 });
    const moved = (await readFacts(page)).find(({ type }) => type === "clock.changed");
    expect(moved).toMatchObject({ byMs: expect.closeTo(HOUR_MS, -3) as number });
    await say(page, "clocks", /Apnoea [a-z -]*(seconds|minute)/u);
    // The page that comes after it has the device's clock as it really is: an hour back again.
    await page.reload();
    await ready(page);
    await say(page, "clocks", /Apnoea [a-z -]*(seconds|minute)/u);
    const facts = await readFacts(page);
    expect(facts.filter(({ type }) => type === "clock.changed")).toHaveLength(2);
    const times = facts.map(({ atMs }) => atMs);
    expect(Math.max(...times) - Math.min(...times)).toBeLessThan(10 * 60_000);
  });

  it("is read only in a second tab, which says so", async () => {
    const before = (await readFacts(page)).length;
    const second = await opened.context.newPage();
    await second.goto(served.origin, { waitUntil: "load" });
    await second
      .getByText(/Another tab keeps the record/u)
      .first()
      .waitFor({ timeout: 60_000 });
    await say(second, "map fifty five", /Read only: another tab keeps this case/u);
    expect((await readFacts(second)).filter(({ type }) => type === "vital.recorded")).toEqual([]);
    await second.close();
    expect((await readFacts(page)).length).toBeGreaterThanOrEqual(before);
  });

  it("lists its entries, the newest first, and keeps a struck one in sight", async () => {
    await say(page, "map eighty eight", /MAP eighty eight/u);
    await say(page, "strike the map", /Strike it\?/u);
    await say(page, "affirm", /Struck: MAP eighty eight/u);
    const entries = page.getByRole("region", { name: "Entries" });
    await entries.locator("del", { hasText: "MAP 88 mmHg" }).waitFor();
    const [newest] = await entries.getByRole("listitem").allInnerTexts();
    expect(newest).toMatch(/MAP 88 mmHg[^]*struck \d\d:\d\d:\d\d, [^]*“map eighty eight”/u);
  });

  it("goes on showing older entries, and the way back from them, after the protocol was read", async () => {
    for (const digit of ["one", "two", "three", "four", "five", "six", "seven"])
      await say(page, `heart rate ninety ${digit}`, new RegExp(`Heart rate ninety ${digit}`, "u"));
    await page.getByRole("button", { name: "Show older entries" }).click();
    await page.getByRole("button", { name: "Protocol" }).click();
    await page.getByRole("button", { name: "Back to the case" }).click();
    const entries = page.getByRole("region", { name: "Entries" });
    expect(await entries.getByRole("listitem").count()).toBeGreaterThan(6);
    await page.getByRole("button", { name: "Show the latest only" }).click();
    await expect.poll(() => entries.getByRole("listitem").count()).toBe(6);
  });

  it("is saved, erased with its label, gone after a reload, and read back from its file", async () => {
    await say(page, "map fifty five", /MAP fifty five/u);
    const label = await labelOf(page);
    await page.getByText("Record", { exact: true }).click();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save as JSON" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe(`tragus-${label.replaceAll(" ", "-")}-record.json`);
    const path = await download.path();
    const text = await readFile(path, "utf8");
    const file = await readRecordFile(text, sha256HexHere());
    if (!file.ok) throw new Error(JSON.stringify(file.error));
    expect(file.value.facts.map(({ id }) => id)).toEqual(
      expect.arrayContaining((await readFacts(page)).slice(0, 5).map(({ id }) => id)),
    );

    expect(await secondCopy(page)).toContain("fifty five");
    await say(page, "erase this case", /It cannot be brought back/u);
    await say(page, `erase ${label}`, /erased from this device/u);
    await page.reload();
    await ready(page);
    expect(await labelOf(page)).not.toBe(label);
    const stored = await page.evaluate(async () =>
      JSON.stringify([
        (await indexedDB.databases()).map(({ name }) => name),
        { ...localStorage },
        { ...sessionStorage },
        await caches.keys(),
      ]),
    );
    const copies = JSON.stringify(await readFacts(page)) + (await secondCopy(page));
    expect(stored + copies).not.toMatch(new RegExp(`${label}|fifty five`, "u"));

    await page.getByText("Record", { exact: true }).click();
    await page.getByLabel("Add a case from JSON").setInputFiles(path);
    await page.getByText(`Case ${label} added`).waitFor({ timeout: 30_000 });
    await page.getByLabel("Add a case from JSON").setInputFiles(path);
    await page.getByText("This case is on this device already.").waitFor({ timeout: 30_000 });
    await page.getByLabel("Add a case from JSON").setInputFiles({
      name: "altered.json",
      mimeType: "application/json",
      buffer: Buffer.from(text.replaceAll("fifty five", "sixty five")),
    });
    await page.getByText(/Not added: the file was altered/u).waitFor({ timeout: 30_000 });
    // The case from the file is none that is taken up again.
    await page.reload();
    await ready(page);
    expect(await page.getByText(`Case ${label}.`, { exact: true }).count()).toBe(0);

    // Neither does it stay for ever: a case of before is erased here.
    await page.getByText("Record", { exact: true }).click();
    const cases = page.locator(".record-cases select");
    const row = cases.locator("option", { hasText: label });
    await row.waitFor({ state: "attached" });
    const choose = async () => cases.selectOption((await row.getAttribute("value")) ?? "");
    const checked = cases.locator("option:checked");
    await choose();
    await expect.poll(() => checked.innerText()).toContain(label);
    // The choice ends with the panel.
    await page.getByText("Record", { exact: true }).click();
    await page.getByText("Record", { exact: true }).click();
    await expect.poll(() => checked.innerText()).not.toContain(label);
    await choose();
    const field = page.getByLabel(`type: ${label}`);
    await field.fill("alfa one");
    await page.getByRole("button", { name: "Erase it" }).click();
    await page.getByText(`Not erased: type ${label}.`).waitFor({ timeout: 30_000 });
    await field.fill(label);
    await page.getByRole("button", { name: "Erase it" }).click();
    await page.getByText(`Erased from this device: case ${label}.`).waitFor({ timeout: 30_000 });
    await page.reload();
    await ready(page);
    expect(JSON.stringify(await readFacts(page)) + (await secondCopy(page))).not.toMatch(/fifty five/u);
  });

  it("gives FHIR and CSV of the open case as files", async () => {
    await say(page, "one ten over sixty", /one ten over sixty/iu);
    await page.getByText("Record", { exact: true }).click();
    const names: string[] = [];
    page.on("download", (download) => names.push(download.suggestedFilename()));
    await page.getByRole("button", { name: "FHIR" }).click();
    await page.getByRole("button", { name: "CSV" }).click();
    const label = (await labelOf(page)).replaceAll(" ", "-");
    await expect
      .poll(() => [...names].sort(), { timeout: 30_000 })
      .toEqual(
        ["drugs.csv", "events.csv", "fhir-collection.json", "fhir-document.json", "vitals.csv"].map(
          (name) => `tragus-${label}-${name}`,
        ),
      );
  });

  it("marks a rehearsal on the screen", async () => {
    await say(page, "new rehearsal", /open a new rehearsal\?/u);
    await say(page, "affirm", /Rehearsal [a-z ]+\. No patient\./u);
    const openings = (await readFacts(page)).filter(({ type }) => type === "case.opened");
    expect(openings).toContainEqual(expect.objectContaining({ rehearsal: true }));
  });

  it("asked for nothing beyond its own address in all of this", () => {
    expect(opened.strayRequests).toEqual([]);
  });
});
