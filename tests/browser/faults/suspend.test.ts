import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it, vi } from "vitest";
import type { Fact } from "../../../src/log/facts.ts";
import { enter, ready, spoken } from "../caseInPage.ts";
import { startDriven, type DrivenBrowser } from "../crash/appLaunch.ts";
import { readFacts } from "../readFacts.ts";
import { serveBuild, type Served } from "../serveBuild.ts";

declare global {
  interface Window {
    /** From this time of `performance.now` on, the device's clock is ahead by `sleptMs`. */
    wakesAtMs: number;
    sleptMs: number;
  }
}

/**
 * Runs in the page before its own scripts. The processes of the browser stand still for seconds; by the device's clock it was
 * minutes, and the counting clock did not count them, as on a Linux that was suspended.
 */
function sleepingClock(): void {
  const now = Date.now.bind(Date);
  window.wakesAtMs = Infinity;
  window.sleptMs = 0;
  Date.now = () => now() + (performance.now() >= window.wakesAtMs ? window.sleptMs : 0);
}

const HELD_MS = 2_000;
const SLEPT_MS = 10 * 60_000;
/** Longer than the lateness from which on a page says that it was held still. */
const STILL_MS = 11_500;
const wait = (ms: number): Promise<void> => new Promise((later) => setTimeout(later, ms));

const apnoeaS = async (page: Page): Promise<number> => {
  const text = await page.locator(".clock", { hasText: "Apnoea" }).locator(".clock-text").innerText();
  const [minutes = NaN, seconds = NaN] = text.split(":").map(Number);
  return 60 * minutes + seconds;
};

/** The sound that reaches the page moves the meter. */
const meterMoves = async (page: Page): Promise<void> => {
  const level = (): Promise<string | null> => page.locator(".meter-level").getAttribute("style");
  const before = await level();
  await vi.waitFor(async () => expect(await level()).not.toBe(before), { timeout: 20_000, interval: 100 });
};

/** What began to sound. */
const soundedIn = (facts: readonly Fact[]): readonly string[] =>
  facts.flatMap((fact) => (fact.type === "speech.started" ? [fact.text] : []));

describe("a device that sleeps in mid-case", () => {
  const profile = mkdtempSync(join(tmpdir(), "tragus-asleep-"));
  let served: Served;
  let driven: DrivenBrowser;
  let page: Page;

  beforeAll(async () => {
    served = await serveBuild();
    driven = await startDriven(inject("browserPath"), profile, () => undefined);
    ({ page } = driven);
    await page.addInitScript(sleepingClock);
    await page.goto(served.origin);
    await ready(page);
    await page.locator(".hearing-listening, .hearing-speaking").waitFor({ timeout: 60_000 });
    await meterMoves(page);
    await enter(page, "map eighty five", "recorded");
    await enter(page, "start apnoea", "recorded");
  });

  afterAll(async () => {
    driven.browser.kill();
    await driven.browser.dead;
    await served.close();
    rmSync(profile, { recursive: true, force: true, maxRetries: 3 });
  });

  it("says so when it wakes, counts the time, says what is due once and at once, and hears again", async () => {
    await wait(1_000);
    const [before, beganMs] = [await apnoeaS(page), Date.now()];
    const facts = (await readFacts(page)).length;
    await page.evaluate((ms) => {
      window.sleptMs = ms;
      window.wakesAtMs = performance.now() + 1_000;
    }, SLEPT_MS);
    driven.browser.hold(true);
    await wait(HELD_MS);
    driven.browser.hold(false);
    await spoken(page, /The device slept or stood still 10 minutes\. Nothing was heard or watched meanwhile\./u);
    const passedS = (SLEPT_MS + Date.now() - beganMs) / 1000;
    expect(Math.abs((await apnoeaS(page)) - before - passedS)).toBeLessThan(3);
    await spoken(page, /MAP eighty five, five under ninety\. Ten minutes old\./u);
    await spoken(page, /Apnoea ten minutes\./u);
    await wait(3_000);
    const since = (await readFacts(page)).slice(facts);
    expect(since.find(({ type }) => type === "device.slept")).toMatchObject({
      forMs: expect.closeTo(SLEPT_MS + HELD_MS, -4) as number,
    });
    // One reminder for ten minutes of them, and no older one before it. A slow machine may come to the next.
    const sounded = soundedIn(since);
    expect(sounded).toEqual([...new Set(sounded)]);
    const ages = sounded.flatMap((text) => /MAP eighty five.*\. (\w+) minutes? old/u.exec(text)?.[1] ?? []);
    expect(ages[0]).toBe("Ten");
    await page.locator(".hearing-listening, .hearing-speaking").waitFor();
    await meterMoves(page);
  });

  it("says so where its counting clock ran on, and hears again", async () => {
    const [before, beganMs] = [await apnoeaS(page), Date.now()];
    const facts = (await readFacts(page)).length;
    driven.browser.hold(true);
    await wait(STILL_MS);
    driven.browser.hold(false);
    await spoken(page, /The device slept or stood still 1\d seconds\./u);
    const passedS = (Date.now() - beganMs) / 1000;
    expect(Math.abs((await apnoeaS(page)) - before - passedS)).toBeLessThan(3);
    const slept = (await readFacts(page)).slice(facts).filter(({ type }) => type === "device.slept");
    expect(slept).toHaveLength(1);
    await meterMoves(page);
    await enter(page, "heart rate ninety", "recorded");
  });
});
