import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { enter, openRecordPanel, ready, saved, savedFacts, valuesIn } from "../caseInPage.ts";
import { openPage, type OpenedPage } from "../openPage.ts";
import { serveTwoBuilds, type TwoBuilds } from "./twoBuilds.ts";

const isNext = async (page: Page): Promise<boolean> => (await page.locator('meta[name="build"]').count()) > 0;
const offline = (page: Page, words: RegExp): Promise<void> =>
  page.locator(".offline", { hasText: words }).waitFor({ timeout: 90_000 });
/** Names of code in any cache of the site. */
const stored = (page: Page): Promise<readonly string[]> =>
  page.evaluate(async () => {
    const caching = (await caches.keys()).map(async (key) =>
      (await (await caches.open(key)).keys()).map(({ url }) => url),
    );
    return (await Promise.all(caching)).flat().filter((url) => /assets\/(later\/.*|index-.*)\.js/u.test(url));
  });

describe("a later build that comes in mid-case", () => {
  let served: TwoBuilds;
  let opened: OpenedPage;
  let page: Page;

  beforeAll(async () => {
    served = await serveTwoBuilds();
    opened = await openPage({ browserPath: inject("browserPath"), origin: served.origin });
    page = opened.page;
    await ready(page);
    await enter(page, "map ninety five", "recorded");
    await offline(page, /Ready to work without a network/u);
  });

  afterAll(async () => {
    await opened.close();
    await served.close();
  });

  it("waits, says so, and leaves the running case and all that it loads later as they were", async () => {
    await page.evaluate(() => Object.assign(window, { isSamePage: true }));
    served.update();
    await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
    await offline(page, /A newer version is waiting/u);
    expect((await stored(page)).some((url) => url.includes("-next"))).toBe(true);
    await enter(page, "heart rate ninety", "recorded");
    // The server has none of these files any more, and none of them was loaded before.
    expect((await saved(page, "FHIR", 2)).get("fhir-document.json")).toContain("Composition");
    expect((await saved(page, "CSV", 3)).get("vitals.csv")).toContain("heart rate ninety");
    await page.getByRole("button", { name: "Protocol", exact: true }).click();
    await page.getByRole("button", { name: "Back to the case" }).click();
    expect(await page.evaluate(() => "isSamePage" in window)).toBe(true);
    expect(await isNext(page)).toBe(false);
  });

  it("does not come with a reload, which resumes the case in the build that it began in", async () => {
    await page.reload();
    await page.getByText("Case resumed").waitFor({ timeout: 60_000 });
    expect(await isNext(page)).toBe(false);
    await enter(page, "sats ninety six", "recorded");
    expect(valuesIn(await savedFacts(page))).toEqual(["map 95", "hr 90", "spo2 96"]);
  });

  it("resumes the case once every window was closed, and only then are the old files gone", async () => {
    const before = (await stored(page)).filter((url) => !url.includes("-next"));
    expect(before.length).toBeGreaterThan(3);
    const blank = await opened.context.newPage();
    await page.close();
    for (let tries = 0; tries < 20; tries++) {
      page = await opened.context.newPage();
      await page.goto(served.origin);
      if (await isNext(page)) break;
      await page.close();
      await blank.waitForTimeout(500);
    }
    expect(await isNext(page)).toBe(true);
    await page.getByText("Case resumed").waitFor({ timeout: 60_000 });
    await enter(page, "temperature thirty seven", "recorded");
    expect(valuesIn(await savedFacts(page))).toEqual(["map 95", "hr 90", "spo2 96", "temp 37"]);
    expect((await saved(page, "FHIR", 2)).get("fhir-document.json")).toContain("Composition");
    await expect
      .poll(async () => (await stored(page)).filter((url) => !url.includes("-next")), { timeout: 20_000 })
      .toEqual([]);
    expect(opened.errors).toEqual([]);
  });
});

describe("a later build that takes the place of one that was never stored", () => {
  it("leaves the case running and saved; what cannot be made any more is said, and what to do", async () => {
    const served = await serveTwoBuilds();
    const opened = await openPage({ browserPath: inject("browserPath"), origin: served.origin });
    const { page } = opened;
    try {
      await page.locator("summary", { hasText: "Record" }).waitFor({ timeout: 60_000 });
      served.update();
      await ready(page);
      await enter(page, "map ninety five", "recorded");
      await openRecordPanel(page);
      await page.getByRole("button", { name: "FHIR", exact: true }).click();
      const told = page.locator("details.settings > [role=status]");
      await told.filter({ hasText: "The record did not leave the device" }).waitFor({ timeout: 30_000 });
      expect(await told.innerText()).toMatch(/cannot be loaded\. Save the record as JSON; load the page anew/u);
      expect(valuesIn(await savedFacts(page))).toEqual(["map 95"]);
    } finally {
      await opened.close();
      await served.close();
    }
  });
});
