import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it, vi } from "vitest";
import { createMemoryFactStore } from "../../src/adapters/storage/memoryFactStore.ts";
import { sayRecogniserError } from "../../src/app/hearingWords.ts";
import { readTalkLine, type TalkLine } from "../../src/cli/talkLine.ts";
import { TerminalCase } from "../../src/cli/terminalCase.ts";
import type { Fact } from "../../src/log/facts.ts";
import { testContext } from "../app/playCase.ts";
import { caseScripts, saidIn } from "../cases/script.ts";
import { openPage } from "./openPage.ts";
import { readFacts } from "./readFacts.ts";
import { serveBuild, type Served } from "./serveBuild.ts";

declare global {
  interface Window {
    /** Transactions that write and have neither been committed nor given up. */
    openWrites: number;
  }
}

const START_MS = 1_800_000_000_000;
/** Of the device itself: a page in a browser has a microphone that can fail, a terminal has none. */
const OF_THE_DEVICE = ["microphoneLost", "recordNotSaved"];
/** Without sound nobody is heard either. */
const CANNOT_LISTEN = sayRecogniserError({ kind: "not-supported", detail: "" });
/** Less than the time that a write may take: it passes on the clock of the page in no time at all. */
const STEP_MS = 5_000;
const CASES = ["shock-without-icp.txt", "herniation-in-flight.txt"];

function linesOf(name: string): readonly TalkLine[] {
  const script = caseScripts().find(({ path }) => path.endsWith(`/${name}`));
  if (script === undefined) throw new Error(`no case ${name}`);
  return saidIn(script).map((said) => {
    const line = readTalkLine(said);
    if (!line.ok) throw new Error(line.error);
    return line.value;
  });
}

/**
 * The words of an alert without those of the device, which are said in one breath with what falls due with them. They take
 * no place under the cap on spoken alerts and move no other reminder (`src/rules/alerts/alertsDue.ts`).
 */
const withoutDevice = (text: string): string => text.replaceAll(` ${CANNOT_LISTEN}`, "");

/** What is warned and reminded of, with its case time to the second. */
function warnings(facts: readonly Fact[]): readonly string[] {
  const opened = facts.find(({ type }) => type === "case.opened");
  return facts.flatMap((fact) => {
    const atS = Math.round((fact.atMs - (opened?.atMs ?? NaN)) / 1000);
    if (fact.type === "prompt.announced") return [`${atS} ${fact.promptId}: ${fact.text}`];
    if (!("alertId" in fact) || !fact.type.startsWith("alert.") || OF_THE_DEVICE.includes(fact.alertId)) return [];
    const priority = "priority" in fact ? fact.priority : "";
    return [`${atS} ${fact.type} ${fact.alertId} ${priority} ${"text" in fact ? withoutDevice(fact.text) : ""}`];
  });
}

async function inTerminal(lines: readonly TalkLine[]): Promise<readonly string[]> {
  const store = createMemoryFactStore();
  const talk = new TerminalCase(testContext(), store, "same", START_MS);
  await talk.start();
  for (const { atMs, text } of lines) {
    if (atMs !== undefined) await talk.advanceTo(atMs);
    const utterance = {
      by: "typed",
      candidates: [{ words: text, score: 0 }],
      endedAtMs: START_MS + talk.caseMs,
    } as const;
    if (text !== "") await talk.hear(utterance, text);
  }
  const facts = await store.load();
  return facts.ok ? warnings(facts.value) : [];
}

/** Runs in the page before its own scripts: counts what is being written. */
function countWrites(): void {
  window.openWrites = 0;
  const { transaction } = IDBDatabase.prototype;
  IDBDatabase.prototype.transaction = function (this: IDBDatabase, names, mode, options) {
    const opened = transaction.call(this, names, mode, options);
    if (mode !== "readwrite") return opened;
    window.openWrites++;
    for (const end of ["complete", "abort"]) opened.addEventListener(end, () => window.openWrites--);
    return opened;
  };
}

/** Waits until what was decided is written, and what waited for its turn meanwhile. */
async function untilWritten(page: Page): Promise<void> {
  for (let idle = 0; idle < 2;) idle = (await page.evaluate(() => window.openWrites)) === 0 ? idle + 1 : 0;
}

/** Moves the clock of the page, no faster than the disk: a write that has no time to end counts as failed. */
async function passTime(page: Page, forMs: number): Promise<void> {
  for (let leftMs = forMs; leftMs > 0; leftMs -= STEP_MS) {
    await page.clock.runFor(Math.min(leftMs, STEP_MS));
    await untilWritten(page);
  }
}

/** The facts once nothing more is being written. */
async function settledFacts(page: Page): Promise<readonly Fact[]> {
  for (let before = -1; ;) {
    await untilWritten(page);
    const facts = await readFacts(page);
    if (facts.length === before) return facts;
    before = facts.length;
    await new Promise((later) => setTimeout(later, 500));
  }
}

/**
 * Runs in the page before its own scripts: there is no sound. The case clock runs ahead of every sound, so words would wait
 * too long to be true and be given back, which they are not in real time.
 */
function withoutSound(): void {
  window.AudioContext = class {
    constructor() {
      throw new DOMException("no sound here", "NotSupportedError");
    }
  } as unknown as typeof AudioContext;
}

/** Types the lines into the page, whose clock stands still between them and is moved by hand. */
async function inPage(served: Served, lines: readonly TalkLine[]): Promise<readonly string[]> {
  const opened = await openPage({
    browserPath: inject("browserPath"),
    origin: served.origin,
    initScripts: [withoutSound, countWrites],
    prepare: async (page) => {
      await page.clock.install({ time: START_MS - 1000 });
      await page.clock.pauseAt(START_MS);
    },
  });
  const { page } = opened;
  try {
    // Before the first line, or it would come at whatever moment of the case loading ends.
    const isDeaf = (fact: Fact): boolean => fact.type === "alert.announced" && fact.alertId === "microphoneLost";
    await vi.waitFor(async () => expect((await readFacts(page)).some(isDeaf)).toBe(true), { timeout: 60_000 });
    let caseMs = 0;
    for (const { atMs = caseMs, text } of lines) {
      await passTime(page, atMs - caseMs);
      caseMs = Math.max(caseMs, atMs);
      await page.getByRole("textbox", { name: "Type instead of speaking" }).fill(text);
      await page.keyboard.press("Enter");
    }
    return warnings(await settledFacts(page));
  } finally {
    await opened.close();
  }
}

describe("the same words at the same times warn alike in the page and in the terminal", () => {
  let served: Served;

  beforeAll(async () => {
    served = await serveBuild();
  });

  afterAll(async () => {
    await served.close();
  });

  it.each(CASES)("%s", async (name) => {
    const lines = linesOf(name);
    const expected = await inTerminal(lines);
    expect(expected.length).toBeGreaterThan(10);
    expect(await inPage(served, lines)).toEqual(expected);
  });
});
