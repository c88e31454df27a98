import type { Spoken } from "../../app/ports.ts";
import { onceEach, renderPulses, type Pulse, type Timbre } from "./renderPulses.ts";

type TonePriority = NonNullable<Spoken["tone"]>;

/**
 * The shape of alarm bursts in IEC 60601-1-8, as far as it is known to us. The marks say how each figure is known:
 * "source" was read in a paper about the standard, "memory" was not and must be checked against the standard itself.
 * No conformity is claimed: loudness at the ear depends on the device and was not measured.
 */
type Burst = {
  /** Pulses in a row, then the gap, then the next group. */
  readonly groups: readonly number[];
  readonly pulseMs: number;
  /** Silence between two pulses of a group. */
  readonly spacingMs: number;
  /** Silence between groups, in order. */
  readonly groupGapsMs: readonly number[];
  readonly fundamentalHz: number;
  readonly peak: number;
};

const HIGH_PULSE_MS = 100; // 75–200 ms [memory, verify]
const HIGH_SPACING_MS = 60; // 50–125 ms [memory, verify]
const HIGH_THIRD_GAP_MS = 2 * HIGH_SPACING_MS + HIGH_PULSE_MS; // twice the spacing and a pulse [memory, verify]
const HIGH_REPEAT_GAP_MS = 360; // 350–1300 ms before the five repeat [memory, verify]; short, since words wait for it

const BURSTS: Readonly<Record<TonePriority, Burst>> = {
  high: {
    groups: [3, 2, 3, 2], // 3 + 2 [source: verified], the five repeated to make ten [memory]
    pulseMs: HIGH_PULSE_MS,
    spacingMs: HIGH_SPACING_MS,
    groupGapsMs: [HIGH_THIRD_GAP_MS, HIGH_REPEAT_GAP_MS, HIGH_THIRD_GAP_MS],
    fundamentalHz: 700, // 150–1000 Hz [source: verified]; which one is ours, as is higher for more urgent
    peak: 0.9, // ours
  },
  medium: {
    groups: [3], // three equal notes [source: verified]
    pulseMs: 150, // 125–250 ms [memory, verify]
    spacingMs: 135, // 125–250 ms [memory, verify]
    groupGapsMs: [],
    fundamentalHz: 520, // as above
    peak: 0.7, // ours
  },
  low: {
    groups: [2], // one or two, optional [memory]
    pulseMs: 150, // 125–250 ms [memory, verify]
    spacingMs: 220, // 125–250 ms, taken from medium: no figure of its own is known
    groupGapsMs: [],
    fundamentalHz: 350, // as above
    peak: 0.5, // ours
  },
};

/** Each partial within 15 dB of the fundamental, four harmonics of it between 300 and 4000 Hz [source: verified]. */
const PARTIALS_DB = [0, -3, -6, -9, -12];
/**
 * Rise time 10–20 % of the pulse [memory, verify], fall time alike. How it is taken is not known to us: this raised
 * cosine takes 19 % from silence to full and 11 % from a tenth to nine tenths, so that it holds either way.
 */
const EDGE = 0.19;

/** When each pulse of an alert's tone sounds. */
function toneFor(priority: TonePriority): readonly Pulse[] {
  const { groups, pulseMs, spacingMs, groupGapsMs, fundamentalHz } = BURSTS[priority];
  const pulses: Pulse[] = [];
  let onsetMs = 0;
  groups.forEach((count, group) => {
    for (let i = 0; i < count; i++) {
      pulses.push({ onsetMs, lengthMs: pulseMs, fundamentalHz });
      onsetMs += pulseMs + (i < count - 1 ? spacingMs : (groupGapsMs[group] ?? 0));
    }
  });
  return pulses;
}

/**
 * The sound that goes before an alert's words. High takes 2.2 s, medium 0.7 s, low 0.5 s.
 *
 * Rendered once for each rate: the samples are shared, and not to be written to.
 */
export const renderTone = onceEach((priority: TonePriority, sampleRate) => {
  const timbre: Timbre = { partialsDb: PARTIALS_DB, edge: EDGE, peak: BURSTS[priority].peak };
  return renderPulses(toneFor(priority), timbre, sampleRate);
});

export const renderAllTones = (sampleRate: number): void =>
  (["high", "medium", "low"] as const).forEach((priority) => renderTone(priority, sampleRate));
