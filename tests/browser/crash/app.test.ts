import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it, vi } from "vitest";
import type { Fact } from "../../../src/log/facts.ts";
import { createRandom } from "../../bench/random.ts";
import { readFacts } from "../readFacts.ts";
import { serveBuild, type Served } from "../serveBuild.ts";
import { startDriven, type DrivenBrowser } from "./appLaunch.ts";
import { CLOCK_LABEL, CLOCK_LINE, judgeRecord, typedOf } from "./appLines.ts";

const KILLS = 20;
const SEED = 20_261_130;
/** One in so many kills comes while the page loads and resumes its case. */
const LOADING_SHARE = 0.3;
const TYPING_MS = 2_500;
const SOON = { timeout: 60_000, interval: 50 };

const type = async (page: Page, line: string): Promise<void> => {
  await page.getByRole("textbox", { name: "Type instead of speaking" }).fill(line);
  await page.keyboard.press("Enter");
};

const startOfClock = (facts: readonly Fact[]): number | undefined =>
  facts.find((fact) => fact.type === "clock.started")?.atMs;

/** What the clock shows and what it should show, read at the same moment, s. */
const readClock = (page: Page, startedAtMs: number): Promise<readonly [shown: number, right: number]> =>
  page.evaluate(
    ([label, startedMs]) => {
      const clock = [...document.querySelectorAll(".clock")].find((row) => row.textContent?.startsWith(label));
      const [minutes = NaN, seconds = NaN] = (clock?.querySelector(".clock-text")?.textContent ?? "")
        .split(":")
        .map(Number);
      return [60 * minutes + seconds, Math.floor((Date.now() - startedMs) / 1000)] as const;
    },
    [CLOCK_LABEL, startedAtMs] as const,
  );

describe(`${KILLS} kills of the page while lines are typed into it`, () => {
  const profile = mkdtempSync(join(tmpdir(), "tragus-crash-app-"));
  const acknowledged: string[] = [];
  const faults: string[] = [];
  const resumedMs: number[] = [];
  let clocksRead = 0;
  let killedLoading = 0;
  let facts: readonly Fact[] = [];
  let served: Served;

  /** Judges what the kills before have left, with the page open on it. */
  async function judge(page: Page, typed: number): Promise<void> {
    const before = [...acknowledged];
    await page.locator("main").waitFor({ timeout: 60_000 });
    await vi.waitFor(
      async () => expect(await page.locator(".save").innerText()).toMatch(/Case (opened|resumed)/),
      SOON,
    );
    facts = await readFacts(page);
    faults.push(...judgeRecord(facts, typed, before));
    const resumed = await page.evaluate(() => window.resumedAtMs);
    if (resumed !== undefined) resumedMs.push(resumed);
    else if (before.length > 0) faults.push("a case was opened where one was to be resumed");
    const startedAtMs = startOfClock(facts);
    if (startedAtMs === undefined) return;
    // The page shows a second a moment after it began; a clock that is wrong is never right.
    await vi.waitFor(async () => {
      const [shown, right] = await readClock(page, startedAtMs);
      expect(shown).toBe(right);
    }, SOON);
    clocksRead++;
  }

  beforeAll(async () => {
    served = await serveBuild();
    const random = createRandom(SEED);
    let line = 0;
    for (let launch = 0; launch <= KILLS; launch++) {
      const isLast = launch === KILLS;
      const { browser, page }: DrivenBrowser = await startDriven(inject("browserPath"), profile, (words) => {
        acknowledged.push(words);
      });
      let isTyping = false;
      const killIn = (ms: number) => setTimeout(() => browser.kill(), ms);
      const usualMs = resumedMs.at(-1) ?? 2_000;
      const isEarly = !isLast && random.next() < LOADING_SHARE;
      if (isEarly) killIn(random.next() * usualMs);
      // Whatever the driver asks of a browser that is killed meanwhile fails; that it was killed by us is looked at below.
      try {
        await page.goto(served.origin);
        await judge(page, line);
        isTyping = true;
        if (!isLast) killIn(random.next() * TYPING_MS);
        if (!isLast && startOfClock(facts) === undefined) await type(page, CLOCK_LINE);
        while (!isLast) await type(page, typedOf(line++));
      } catch (error) {
        if (!browser.isKilled()) throw error;
      }
      if (!isTyping) killedLoading++;
      browser.kill();
      await browser.dead;
    }
    const sorted = resumedMs.toSorted((a, b) => a - b).map(Math.round);
    console.log(`resumed after ms: median ${sorted[sorted.length >> 1]}, most ${sorted.at(-1)}, of ${sorted.length}`);
  }, 900_000);

  afterAll(async () => {
    await served.close();
    rmSync(profile, { recursive: true, force: true, maxRetries: 3 });
  });

  it("lose nothing, tear nothing, and keep the order", () => {
    expect(faults).toEqual([]);
  });

  it("leave a case that is resumed with its clock running right", () => {
    expect(resumedMs.length).toBeGreaterThanOrEqual(KILLS / 2);
    expect(clocksRead).toBeGreaterThanOrEqual(KILLS / 2);
  });

  it("struck while lines were typed, and while the page loaded", () => {
    expect(killedLoading).toBeGreaterThanOrEqual(2);
    expect(killedLoading).toBeLessThanOrEqual(KILLS / 2);
    expect(acknowledged.length).toBeGreaterThanOrEqual(KILLS / 2);
  });
});
