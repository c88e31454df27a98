/** One burst of sound in a tone or a mark. Times from the start of the whole. */
export type Pulse = {
  readonly onsetMs: number;
  readonly lengthMs: number;
  readonly fundamentalHz: number;
};

/** How a row of pulses sounds. */
export type Timbre = {
  /** Relative strengths of the fundamental and its harmonics, in dB; the first is the fundamental. */
  readonly partialsDb: readonly number[];
  /** Part of a pulse's length spent rising, and again falling. */
  readonly edge: number;
  /** Largest sample, 0..1. */
  readonly peak: number;
};

/**
 * Renders pulses to sound.
 *
 * @param sampleRate Hz; partials above half of it are left out rather than folded back.
 * @returns samples in -peak..peak, ending with the last pulse.
 */
export function renderPulses(
  pulses: readonly Pulse[],
  { partialsDb, edge, peak }: Timbre,
  sampleRate: number,
): Float32Array {
  const toSamples = (ms: number) => Math.round((ms / 1000) * sampleRate);
  const pcm = new Float32Array(
    Math.max(0, ...pulses.map(({ onsetMs, lengthMs }) => toSamples(onsetMs) + toSamples(lengthMs))),
  );
  const gains = partialsDb.map((db) => 10 ** (db / 20));
  for (const { onsetMs, lengthMs, fundamentalHz } of pulses) {
    const start = toSamples(onsetMs);
    const length = toSamples(lengthMs);
    for (let i = 0; i < length; i++) {
      let sample = 0;
      gains.forEach((gain, k) => {
        const hz = fundamentalHz * (k + 1);
        if (hz < sampleRate / 2) sample += gain * Math.sin((2 * Math.PI * hz * i) / sampleRate);
      });
      pcm[start + i] = sample * envelope(i / length, edge);
    }
  }
  return scaleTo(pcm, peak);
}

/** Raised-cosine rise and fall: no click at either end. `at` runs from 0 to 1 through the pulse. */
function envelope(at: number, edge: number): number {
  const fromNearerEnd = Math.min(at, 1 - at);
  return fromNearerEnd >= edge ? 1 : 0.5 - 0.5 * Math.cos((Math.PI * fromNearerEnd) / edge);
}

function scaleTo(pcm: Float32Array, peak: number): Float32Array {
  const largest = pcm.reduce((max, sample) => Math.max(max, Math.abs(sample)), 0);
  return largest === 0 ? pcm : pcm.map((sample) => (sample * peak) / largest);
}
