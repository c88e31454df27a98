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

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
/** What a shown clock may differ by: it is drawn twice a second, and read a moment later. */
const DRAWN_S = 3;

/** A clock of the page, s. */
const shownS = (page: Page, label: string): Promise<number> =>
  page.evaluate((wanted) => {
    const row = [...document.querySelectorAll(".clock")].find((each) => each.textContent?.startsWith(wanted));
    const [minutes = NaN, seconds = NaN] = (row?.querySelector(".clock-text")?.textContent ?? "").split(":").map(Number);
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
    opened = await openPage({ browserPath: inject("browserPath"), origin: served.origin, initScripts: [settableClock] });
    page = opened.page;
    await ready(page);
    await enter(page, "start apnoea", "recorded");
    await enter(page, "heart rate ninety", "recorded");
    console.log(await page.locator(".clock").allInnerTexts());
  });

  afterAll(async () => {
    await opened.close();
    await served.close();
  });

  it.each([
    ["forward", HOUR_MS],
    ["back", -HOUR_MS],
  ] as const)("%s by an hour moves no clock, age or timer, and is told, printed and kept over a reload", async (way, byMs) => {
    const startedMs = Date.now();
    const before = await shownS(page, "Apnoea");
    await setClock(page, byMs);
    await spoken(page, new RegExp(`clock was set ${way} 60 minutes\\. Case times run on`, "u"));
    const passedS = (Date.now() - startedMs) / 1000;
    expect(Math.abs((await shownS(page, "Apnoea")) - before - passedS)).toBeLessThan(DRAWN_S);
    expect(await page.locator(".tiles").innerText()).toMatch(/90 \/min\s+measured, (now|\d+ s ago|1 min ago)/u);
    console.log(await page.locator(".tiles").innerText().then((t) => t.slice(0, 200)));
    await page.reload();
    await page.getByText("Case resumed").waitFor({ timeout: 60_000 });
    const reloadedS = (Date.now() - startedMs) / 1000;
    await expect.poll(() => shownS(page, "Apnoea")).toBeGreaterThan(0);
    expect(Math.abs((await shownS(page, "Apnoea")) - before - reloadedS)).toBeLessThan(DRAWN_S);
    const facts = await savedFacts(page);
    console.log(facts.filter((f) => f.type === "clock.changed"));
    console.log((await printed(page)).match(/.{80}clock.{80}/giu));
    const times = facts.map(({ atMs }) => atMs);
    expect(times).toEqual(times.toSorted((a, b) => a - b));
  });
});
