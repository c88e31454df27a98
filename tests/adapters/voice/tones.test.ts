import { describe, expect, it } from "vitest";
import { renderTone } from "../../../src/adapters/voice/tones.ts";
import { burstsOf, levelDb } from "./spectrum.ts";

// Figures of IEC 60601-1-8 as far as they are known to us: pulse counts and the four harmonics within 15 dB were read
// in papers about the standard, the other ranges are from memory. Agreement here is no claim of conformity.
const ROWS = [
  { priority: "high", pulses: 10, lengthMs: [75, 200], spacingMs: [50, 125] },
  { priority: "medium", pulses: 3, lengthMs: [125, 250], spacingMs: [125, 250] },
  { priority: "low", pulses: 2, lengthMs: [125, 250], spacingMs: [125, 250] },
] as const;
const RATES = [16_000, 44_100, 48_000];
const EXACT_MS = 1; // a pulse's first and last samples are nearly zero

const CASES = ROWS.flatMap((row) => RATES.map((sampleRate) => ({ ...row, sampleRate })));

describe.each(CASES)(
  "the $priority tone at $sampleRate Hz",
  ({ priority, pulses, lengthMs, spacingMs, sampleRate }) => {
    const pcm = renderTone(priority, sampleRate);
    const bursts = burstsOf(pcm, sampleRate);
    const gapsMs = bursts.slice(1).map((burst, i) => burst.onsetMs - bursts[i]!.onsetMs - bursts[i]!.lengthMs);

    it(`has ${pulses} pulses of ${lengthMs.join("–")} ms, all alike`, () => {
      expect(bursts).toHaveLength(pulses);
      for (const burst of bursts) {
        expect(burst.lengthMs).toBeGreaterThanOrEqual(lengthMs[0] - EXACT_MS);
        expect(burst.lengthMs).toBeLessThanOrEqual(lengthMs[1]);
        expect(Math.abs(burst.lengthMs - bursts[0]!.lengthMs)).toBeLessThan(EXACT_MS);
      }
    });

    it("spaces the pulses as its priority asks", () => {
      const longGaps = priority === "high" ? [2, 4, 7] : [];
      gapsMs.forEach((gapMs, i) => {
        if (longGaps.includes(i)) return;
        expect(gapMs).toBeGreaterThanOrEqual(spacingMs[0] - EXACT_MS);
        expect(gapMs).toBeLessThanOrEqual(spacingMs[1] + EXACT_MS);
      });
      if (priority !== "high") return;
      const twiceAndAPulseMs = 2 * gapsMs[0]! + bursts[0]!.lengthMs;
      expect(Math.abs(gapsMs[2]! - twiceAndAPulseMs)).toBeLessThan(2 * EXACT_MS);
      expect(Math.abs(gapsMs[7]! - twiceAndAPulseMs)).toBeLessThan(2 * EXACT_MS);
      expect(gapsMs[4]).toBeGreaterThanOrEqual(350);
      expect(gapsMs[4]).toBeLessThanOrEqual(1_300);
    });

    it("has a fundamental of 150–1000 Hz and four of its harmonics, 300–4000 Hz, within 15 dB of it", () => {
      const first = pcm.slice(0, Math.round((bursts[0]!.lengthMs / 1000) * sampleRate));
      let fundamental = { hz: 0, db: -Infinity };
      for (let hz = 50; hz <= 4_000; hz += 5) {
        const db = levelDb(first, hz, sampleRate);
        if (db > fundamental.db) fundamental = { hz, db };
      }
      expect(fundamental.hz).toBeGreaterThanOrEqual(150);
      expect(fundamental.hz).toBeLessThanOrEqual(1_000);
      const harmonics = [2, 3, 4, 5, 6]
        .map((k) => k * fundamental.hz)
        .filter((hz) => hz >= 300 && hz <= 4_000 && levelDb(first, hz, sampleRate) > fundamental.db - 15);
      expect(harmonics.length).toBeGreaterThanOrEqual(4);
    });

    it("rises over 10–20 % of a pulse and never clips", () => {
      const length = (bursts[0]!.lengthMs / 1000) * sampleRate;
      const peak = (from: number, to: number) =>
        pcm.slice(from * length, to * length).reduce((max, sample) => Math.max(max, Math.abs(sample)), 0);
      const full = peak(0.3, 0.7);
      expect(peak(0, 0.05)).toBeLessThan(0.5 * full);
      expect(peak(0.2, 0.3)).toBeGreaterThan(0.9 * full);
      expect(peak(0, pcm.length)).toBeLessThanOrEqual(0.9001);
    });
  },
);

it("is louder and higher the more urgent", () => {
  const peaks = ROWS.map(({ priority }) => Math.max(...renderTone(priority, 16_000)));
  expect(peaks).toEqual([...peaks].sort((a, b) => b - a));
});
