import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { enter, ready, saved, savedFacts, spoken } from "../caseInPage.ts";
import { openPage, type OpenedPage } from "../openPage.ts";
import { serveBuild, type Served } from "../serveBuild.ts";

declare global {
  interface Window {
    /** So far is the device's clock ahead of the machine's, ms. `performance.now` is left alone. */
    clockAheadMs: number;
  }
}

/**
 * Runs in the page before its own scripts: a clock that a test can set. It outlives a reload, as the clock of a device does,
 * and lies in the browser and not in the page's storage, which the app owns.
 */
function settableClock(): void {
  const now = Date.now.bind(Date);
  window.clockAheadMs = Number(window.name === "" ? 0 : window.name);
  Date.now = () => now() + window.clockAheadMs;
}

const setClock = (page: Page, byMs: number): Promise<void> =>
  page.evaluate((ms) => {
    window.clockAheadMs += ms;
    window.name = String(window.clockAheadMs);
  }, byMs);

const SOON = { timeout: 20_000 };
const HOUR_MS = 3_600_000;
/** What a shown clock may differ by: it is drawn twice a second, and read a moment later. */
const DRAWN_S = 3;

/** A clock of the page, s. */
const shownS = (page: Page, label: string): Promise<number> =>
  page.evaluate((wanted) => {
    const row = [...document.querySelectorAll(".clock")].find((each) => each.textContent?.startsWith(wanted));
    const [minutes = NaN, seconds = NaN] = (row?.querySelector(".clock-text")?.textContent ?? "")
      .split(":")
      .map(Number);
    return 60 * minutes + seconds;
  }, label);

const printed = (page: Page): Promise<string> =>
  page.evaluate(() => {
    dispatchEvent(new Event("beforeprint"));
    const text = document.querySelector(".record")?.textContent ?? "";
    dispatchEvent(new Event("afterprint"));
    return text;
  });

describe("a clock that is set", () => {
  let served: Served;
  let opened: OpenedPage;
  let page: Page;

  beforeAll(async () => {
    served = await serveBuild();
    opened = await openPage({
      browserPath: inject("browserPath"),
      origin: served.origin,
      initScripts: [settableClock],
    });
    page = opened.page;
    await ready(page);
    await enter(page, "start apnoea", "recorded");
    await enter(page, "heart rate ninety", "recorded");
  });

  afterAll(async () => {
    await opened.close();
    await served.close();
  });

  it.each([
    ["forward", HOUR_MS],
    ["back", -HOUR_MS],
  ] as const)(
    "%s by an hour moves no clock, age or timer, and is told, printed and kept over a reload",
    async (way, byMs) => {
      const startedMs = Date.now();
      const before = await shownS(page, "Apnoea");
      await setClock(page, byMs);
      await spoken(page, new RegExp(`clock was set ${way} 60 minutes\\. Case times run on`, "u"));
      const passedS = (Date.now() - startedMs) / 1000;
      expect(Math.abs((await shownS(page, "Apnoea")) - before - passedS)).toBeLessThan(DRAWN_S);
      expect(await page.locator(".tiles").innerText()).toMatch(/90 \/min\s+measured, (now|\d+ s ago|1 min ago)/u);
      await page.reload();
      await page.getByText("Case resumed").waitFor({ timeout: 60_000 });
      const reloadedS = (Date.now() - startedMs) / 1000;
      await expect.poll(() => shownS(page, "Apnoea"), SOON).toBeGreaterThan(0);
      expect(Math.abs((await shownS(page, "Apnoea")) - before - reloadedS)).toBeLessThan(DRAWN_S);
      const facts = await savedFacts(page);
      expect(facts.findLast(({ type }) => type === "clock.changed")).toMatchObject({
        byMs: expect.closeTo(byMs, -3) as number,
      });
      expect(await printed(page)).toMatch(new RegExp(`At [\\d:]+: clock of the device set ${way} by 1 h`, "u"));
      const times = facts.map(({ atMs }) => atMs);
      expect(times).toEqual(times.toSorted((a, b) => a - b));
    },
  );
});

/** Summer time ends in London: 01:59:59 +01:00 is followed by 01:00:00 +00:00. */
const CHANGE_MS = Date.UTC(2026, 9, 25, 1);
/** So long before that the page is opened. */
const BEFORE_MS = 12_000;

describe("the end of summer time in mid-case", () => {
  let served: Served;
  let opened: OpenedPage;
  let page: Page;

  beforeAll(async () => {
    served = await serveBuild();
    opened = await openPage({
      browserPath: inject("browserPath"),
      origin: served.origin,
      initScripts: [settableClock],
      prepare: async (empty) => {
        const devTools = await empty.context().newCDPSession(empty);
        await devTools.send("Emulation.setTimezoneOverride", { timezoneId: "Europe/London" });
        await empty.evaluate((ms) => (window.name = String(ms)), CHANGE_MS - BEFORE_MS - Date.now());
      },
    });
    page = opened.page;
    await ready(page);
  });

  afterAll(async () => {
    await opened.close();
    await served.close();
  });

  it("moves no clock and no age, is no news, and both sides of it are exported with their own offset", async () => {
    await enter(page, "start apnoea", "recorded");
    await enter(page, "heart rate ninety", "recorded");
    const beganMs = await page.evaluate(() => Date.now());
    expect(beganMs).toBeLessThan(CHANGE_MS);
    await page.waitForFunction((changeMs) => Date.now() > changeMs + 2_000, CHANGE_MS, { timeout: 30_000 });
    const passedS = ((await page.evaluate(() => Date.now())) - beganMs) / 1000;
    expect(Math.abs((await shownS(page, "Apnoea")) - passedS)).toBeLessThan(DRAWN_S);
    expect(await page.locator(".tiles").innerText()).toMatch(/90 \/min\s+measured, (now|1?\d s ago)/u);
    await enter(page, "sats ninety six", "recorded");
    const facts = await savedFacts(page);
    expect(facts.filter(({ type }) => /clock\.changed|device\.slept/u.test(type))).toEqual([]);
    const vitals = (await saved(page, "CSV", 3)).get("vitals.csv") ?? "";
    const times = [...vitals.matchAll(/2026-10-25T[^,]+/gu)].map(([time]) => time);
    expect(times).toEqual([
      expect.stringMatching(/^2026-10-25T01:59:\d\d\.\d{3}\+01:00$/u),
      expect.stringMatching(/^2026-10-25T01:00:\d\d\.\d{3}\+00:00$/u),
    ]);
    expect(Date.parse(times[0]!)).toBeLessThan(CHANGE_MS);
    expect(Date.parse(times[1]!)).toBeGreaterThan(CHANGE_MS);
    expect(await printed(page)).toContain(
      "Local time changed from GMT+01:00 to GMT+00:00 during the case; times after the change carry their offset.",
    );
  });
});
