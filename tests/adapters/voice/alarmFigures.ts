import { expect } from "vitest";
import { burstsOf, levelDb } from "./spectrum.ts";

/**
 * Figures of IEC 60601-1-8 as far as they are known to us, and how: "verified" was read in a paper about the standard,
 * "memory" was not. Agreement is no claim of conformity.
 */
type AlarmRow = {
  readonly priority: "high" | "medium" | "low";
  /** Three equal notes, and 3 + 2: verified. The five twice over, and one or two for low: memory. */
  readonly groups: readonly number[];
  /** Memory. */
  readonly lengthMs: readonly [number, number];
  /** From the end of a pulse to the next within a group: memory. None is known for low: that of medium. */
  readonly spacingMs: readonly [number, number];
};

export const ALARM_ROWS: readonly AlarmRow[] = [
  { priority: "high", groups: [3, 2, 3, 2], lengthMs: [75, 200], spacingMs: [50, 125] },
  { priority: "medium", groups: [3], lengthMs: [125, 250], spacingMs: [125, 250] },
  { priority: "low", groups: [2], lengthMs: [125, 250], spacingMs: [125, 250] },
];
/** Between the fifth pulse and the sixth: memory. Between third and fourth it is twice the spacing and a pulse: memory. */
const REPEAT_MS = [350, 1_300] as const;
/** Fundamental, and at least four harmonics of it within so much of its level: verified. */
const FUNDAMENTAL_HZ = [150, 1_000] as const;
const HARMONICS_HZ = [300, 4_000] as const;
const HARMONICS = 4;
const WITHIN_DB = 15;
/** Of a pulse's length: memory. Whether from silence to full or from a tenth to nine tenths is not known: both are checked. */
const RISE = [0.1, 0.2] as const;

/** A pulse's first and last samples are nearly zero. */
const EXACT_MS = 1;

export function fundamentalOf(pulse: Float32Array, sampleRate: number): { readonly hz: number; readonly db: number } {
  let loudest = { hz: 0, db: -Infinity };
  for (let hz = 50; hz <= HARMONICS_HZ[1]; hz += 5) {
    const db = levelDb(pulse, hz, sampleRate);
    if (db > loudest.db) loudest = { hz, db };
  }
  return loudest;
}

/** Loudness against the middle of the pulse, by the root mean square over one period. */
function envelopeOf(pulse: Float32Array, sampleRate: number, hz: number): (at: number) => number {
  const half = sampleRate / hz / 2;
  const rms = (at: number): number => {
    const part = pulse.subarray(Math.max(0, Math.round(at - half)), Math.round(at + half));
    return Math.sqrt(part.reduce((sum, x) => sum + x * x, 0) / (2 * half));
  };
  const full = rms(pulse.length / 2);
  return (at) => rms(at) / full;
}

const within = (value: number, [least, most]: readonly [number, number], slack = 0): void => {
  expect(value).toBeGreaterThanOrEqual(least - slack);
  expect(value).toBeLessThanOrEqual(most + slack);
};

/** Holds a sound against the row, from its samples alone: pulses, their length and spacing, what they are made of, rise and fall. */
export function expectAlarm(row: AlarmRow, pcm: Float32Array, sampleRate: number): void {
  const bursts = burstsOf(pcm, sampleRate);
  expect(bursts).toHaveLength(row.groups.reduce((sum, count) => sum + count, 0));
  const [first] = bursts;
  for (const { lengthMs } of bursts) {
    within(lengthMs, row.lengthMs, EXACT_MS);
    expect(Math.abs(lengthMs - first!.lengthMs)).toBeLessThan(EXACT_MS);
  }
  const gapsMs = bursts.slice(1).map((burst, i) => burst.onsetMs - bursts[i]!.onsetMs - bursts[i]!.lengthMs);
  let ends = -1;
  const between = row.groups.slice(0, -1).map((count) => (ends += count));
  gapsMs.filter((_gap, i) => !between.includes(i)).forEach((gapMs) => within(gapMs, row.spacingMs, EXACT_MS));
  between.forEach((at, i) => {
    if (i % 2 === 1) within(gapsMs[at]!, REPEAT_MS);
    else expect(Math.abs(gapsMs[at]! - 2 * gapsMs[0]! - first!.lengthMs)).toBeLessThan(3 * EXACT_MS);
  });
  for (const { onsetMs, lengthMs } of bursts) {
    const [from, to] = [onsetMs, onsetMs + lengthMs].map((ms) => Math.round((ms / 1000) * sampleRate));
    expectPulse(pcm.slice(from, to), sampleRate);
  }
}

function expectPulse(pulse: Float32Array, sampleRate: number): void {
  const { hz, db } = fundamentalOf(pulse, sampleRate);
  within(hz, FUNDAMENTAL_HZ);
  const heard = [2, 3, 4, 5, 6, 7, 8]
    .map((k) => k * hz)
    .filter((at) => at >= HARMONICS_HZ[0] && at <= HARMONICS_HZ[1] && levelDb(pulse, at, sampleRate) > db - WITHIN_DB);
  expect(heard.length).toBeGreaterThanOrEqual(HARMONICS);
  const envelope = envelopeOf(pulse, sampleRate, hz);
  for (const at of [envelope, (i: number) => envelope(pulse.length - i)]) {
    const reaches = (level: number): number => {
      let i = 0;
      while (at(i) < level) i++;
      return i / pulse.length;
    };
    within(reaches(0.98), RISE);
    within(reaches(0.9) - reaches(0.1), RISE);
  }
}
