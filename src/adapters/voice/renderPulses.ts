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
  const endMs = Math.max(0, ...pulses.map(({ onsetMs, lengthMs }) => onsetMs + lengthMs));
  const pcm = new Float32Array(toSamples(endMs));
  const gains = partialsDb.map((db) => 10 ** (db / 20));
  // The pulses of a tone are alike: rendering each anew would hold a page up for 50 ms before an alert.
  const rendered = new Map<string, Float32Array>();
  for (const { onsetMs, lengthMs, fundamentalHz } of pulses) {
    const key = `${lengthMs} ${fundamentalHz}`;
    const pulse = rendered.get(key) ?? renderPulse(toSamples(lengthMs), fundamentalHz / sampleRate, gains, edge);
    rendered.set(key, pulse);
    pcm.set(pulse, Math.min(toSamples(onsetMs), pcm.length - pulse.length));
  }
  return scaleTo(pcm, peak);
}

/** Renders each sound only once at each rate; what is handed out is shared, and not to be written to. */
export function onceEach<Name extends string>(
  render: (name: Name, sampleRate: number) => Float32Array,
): (name: Name, sampleRate: number) => Float32Array {
  const rendered = new Map<string, Float32Array>();
  return (name, sampleRate) => {
    const key = `${name} ${sampleRate}`;
    const sound = rendered.get(key) ?? render(name, sampleRate);
    rendered.set(key, sound);
    return sound;
  };
}

/** One pulse; `cycles` of the fundamental pass in a sample. */
function renderPulse(length: number, cycles: number, gains: readonly number[], edge: number): Float32Array {
  const audible = gains.filter((_gain, k) => cycles * (k + 1) < 0.5);
  return new Float32Array(length).map((_empty, i) => {
    const wave = audible.reduce((sum, gain, k) => sum + gain * Math.sin(2 * Math.PI * cycles * (k + 1) * i), 0);
    return wave * envelope(i / length, edge);
  });
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
