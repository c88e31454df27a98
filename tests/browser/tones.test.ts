import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { renderMark } from "../../src/adapters/voice/marks.ts";
import { renderTone } from "../../src/adapters/voice/tones.ts";
import { ALARM_ROWS, expectAlarm } from "../adapters/voice/alarmFigures.ts";
import { burstsOf } from "../adapters/voice/spectrum.ts";
import { openPage, type OpenedPage } from "./openPage.ts";
import { serveScripts, type ServedScripts } from "./serveScripts.ts";
import type { playOffline, Playing } from "./tonesInPage.ts";

// What the app's own line and gain graph hand to the sound device, sample by sample, as headless Chromium renders it.

const PAGE_SCRIPT = "/tests/browser/tonesInPage.ts";
const RATES = [44_100, 48_000];
/** Onsets have been seen within 3 ms of their plan in an offline context. */
const ONSET_MS = 3;
/** A line starts its first sound so much after it is told, so that the start is not in the past. */
const LEAD_MS = 5;

let served: ServedScripts;
let opened: OpenedPage;
let page: Page;
beforeAll(async () => {
  served = await serveScripts();
  opened = await openPage({ browserPath: inject("browserPath"), origin: served.origin });
  page = opened.page;
});
afterAll(async () => {
  await opened.close();
  await served.close();
});

const samples = (bytes: string): Float32Array => new Float32Array(new Uint8Array(Buffer.from(bytes, "base64")).buffer);
const play = async (playing: Playing) => {
  // As text: an import that the test runner sees is rewritten for Node.
  const call = `import(${JSON.stringify(PAGE_SCRIPT)}).then((script) => script.playOffline(${JSON.stringify(playing)}))`;
  const { bytes, spectrumBytes } = await page.evaluate<Awaited<ReturnType<typeof playOffline>>>(call);
  return { pcm: samples(bytes), spectrum: samples(spectrumBytes) };
};
const peakOf = (pcm: Float32Array): number => pcm.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
const rmsOf = (pcm: Float32Array): number => Math.sqrt(pcm.reduce((sum, x) => sum + x * x, 0) / pcm.length);

describe.each(ALARM_ROWS.flatMap((row) => RATES.map((sampleRate) => ({ row, sampleRate }))))(
  "the $row.priority tone as played at $sampleRate Hz",
  ({ row, sampleRate }) => {
    it("has the pulses, the harmonics and the rise of its row, each pulse on time", async () => {
      const { pcm } = await play({ sampleRate, lastsS: 2.6, sound: { tone: row.priority } });
      expectAlarm(row, pcm, sampleRate);
      const planned = burstsOf(renderTone(row.priority, sampleRate), sampleRate);
      burstsOf(pcm, sampleRate).forEach(({ onsetMs }, i) =>
        expect(Math.abs(onsetMs - LEAD_MS - planned[i]!.onsetMs)).toBeLessThan(ONSET_MS),
      );
    });

    // Judge: the browser's own Fourier transform (AnalyserNode), in the middle of the first pulse.
    it("has at least four harmonics within 15 dB of its fundamental by the browser's own analyser", async () => {
      const { spectrum } = await play({ sampleRate, lastsS: 1, sound: { tone: row.priority }, spectrumAtS: 0.09 });
      const hzPerBin = sampleRate / 2 / spectrum.length;
      const peaks = [...spectrum.keys()].filter(
        (i) => spectrum[i]! > (spectrum[i - 1] ?? 0) && spectrum[i]! >= (spectrum[i + 1] ?? 0),
      );
      const fundamental = peaks.reduce((best, i) => (spectrum[i]! > spectrum[best]! ? i : best), peaks[0]!);
      expect(fundamental * hzPerBin).toBeGreaterThanOrEqual(150);
      expect(fundamental * hzPerBin).toBeLessThanOrEqual(1_000);
      const harmonics = peaks.filter(
        (i) =>
          i !== fundamental &&
          i * hzPerBin >= 300 &&
          i * hzPerBin <= 4_000 &&
          spectrum[i]! > spectrum[fundamental]! - 15,
      );
      expect(harmonics.length).toBeGreaterThanOrEqual(4);
    });
  },
);

describe("a mark as played", () => {
  it.each(["heard", "asked", "refused", "called"] as const)(
    "%s is short, and soft beside the softest alert",
    async (mark) => {
      const { pcm } = await play({ sampleRate: 48_000, lastsS: 0.3, sound: { mark } });
      const bursts = burstsOf(pcm, 48_000);
      const last = bursts.at(-1)!;
      expect(last.onsetMs + last.lengthMs - bursts[0]!.onsetMs).toBeLessThanOrEqual(120);
      const loud = (sound: Float32Array) => rmsOf(sound.filter((x) => x !== 0));
      expect(20 * Math.log10(loud(pcm) / loud(renderTone("low", 48_000)))).toBeLessThan(-6);
      expect(peakOf(pcm)).toBeCloseTo(peakOf(renderMark(mark, 48_000)), 6);
    },
  );
});

describe("loudness as played", () => {
  it.each([
    ["low", -12],
    ["low", 3],
    ["high", -20],
  ] as const)("the %s tone at %i dB is the same tone, so much louder", async (tone, gainDb) => {
    const [usual, changed] = await Promise.all(
      [0, gainDb].map((db) => play({ sampleRate: 48_000, lastsS: 2.6, sound: { tone }, gainDb: db })),
    );
    const gain = 10 ** (gainDb / 20);
    const worst = usual!.pcm.reduce((most, x, i) => Math.max(most, Math.abs(x * gain - changed!.pcm[i]!)), 0);
    expect(peakOf(usual!.pcm)).toBeGreaterThan(0.3);
    expect(worst).toBeLessThan(1e-5);
  });

  it.each([
    [{ tone: "high" }, 12],
    [{ wordsHz: 2_800, peak: 1 }, 0],
    [{ wordsHz: 2_800, peak: 1 }, 12],
  ] as const)("%j at %i dB does not clip", async (sound, gainDb) => {
    const { pcm } = await play({ sampleRate: 48_000, lastsS: 2.6, sound, gainDb });
    expect(peakOf(pcm)).toBeGreaterThan(0.7);
    expect(peakOf(pcm)).toBeLessThan(0.99);
  });

  it("words at −12 dB are softer by that much", async () => {
    const sound = { wordsHz: 1_000, peak: 0.1 };
    const [usual, soft] = await Promise.all(
      [0, -12].map(async (gainDb) => (await play({ sampleRate: 48_000, lastsS: 1, sound, gainDb })).pcm.slice(24_000)),
    );
    expect(20 * Math.log10(rmsOf(soft!) / rmsOf(usual!))).toBeCloseTo(-12, 0);
  });
});

describe("words as played", () => {
  // Engines are loudest where the first rows are, consonants are told apart where the last are.
  it("lose what engines drown and gain what tells consonants apart", async () => {
    const levels: number[] = [];
    for (const wordsHz of [125, 250, 1_000, 2_800]) {
      const { pcm } = await play({ sampleRate: 48_000, lastsS: 1, sound: { wordsHz, peak: 0.002 } });
      levels.push(20 * Math.log10(rmsOf(pcm.slice(24_000))));
    }
    expect(levels[1]! - levels[0]!).toBeGreaterThan(10);
    expect(levels[2]! - levels[1]!).toBeGreaterThan(10);
    expect(levels[3]! - levels[2]!).toBeGreaterThan(12);
  });

  // The compressor looks ahead by 6 ms (Web Audio, DynamicsCompressorNode).
  it("start at most 8 ms later than a tone would", async () => {
    const { pcm } = await play({ sampleRate: 48_000, lastsS: 1, sound: { wordsHz: 1_000, peak: 0.5 } });
    const startsMs = (1000 * pcm.findIndex((x) => Math.abs(x) > 0.05)) / 48_000;
    expect(startsMs).toBeGreaterThan(LEAD_MS);
    expect(startsMs).toBeLessThan(LEAD_MS + 8);
  });
});

describe("stopping", () => {
  it.each([
    ["a tone", { tone: "high" }],
    ["words", { wordsHz: 1_000, peak: 0.5 }],
  ] as const)("silences %s within 10 ms, and without a click", async (_what, sound) => {
    const stopAtS = 0.056; // a whole number of the engine's blocks, and in the middle of a pulse
    const { pcm } = await play({ sampleRate: 48_000, lastsS: 1, sound, stopAtS });
    const stopAt = stopAtS * 48_000;
    expect(peakOf(pcm.slice(stopAt - 480, stopAt))).toBeGreaterThan(0.1);
    expect(peakOf(pcm.slice(stopAt + 480))).toBe(0);
    const steps = (from: number, to: number) =>
      pcm.slice(from, to).reduce((most, x, i) => Math.max(most, Math.abs(x - pcm[from + i - 1]!)), 0);
    expect(steps(stopAt, stopAt + 480)).toBeLessThanOrEqual(1.01 * steps(stopAt - 480, stopAt));
  });
});
