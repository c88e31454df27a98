const RATE_HZ = 16_000;
const REPORT_MS = 200;
const NOISE_SETTLES_MS = 1_000;
const SILENT_MICROPHONE_MS = 3_000;
/** Less than one step of 16-bit sound from lowest to highest: no microphone that works is that still. */
const FLAT_SPAN = 1 / 32_768;
const CLIPPED_LEVEL = 0.99;
const LOWEST_DB = -120;

export type MeterEvent =
  | { readonly kind: "level"; readonly levelDb: number; readonly noiseDb: number; readonly clipped: boolean }
  | { readonly kind: "silentMicrophone"; readonly forMs: number }
  | { readonly kind: "soundAgain" };

export type Meter = {
  /** @param bandPower mean square of the frame's speech band (`speechBand.ts`). */
  measure(frame: Float32Array, bandPower: number, inSpeech: boolean): readonly MeterEvent[];
};

const NO_EVENTS: readonly MeterEvent[] = [];

/**
 * Level of the speech band and its noise floor, about five times a second, in dB relative to full scale (RMS; a full-scale
 * sine reads −3). The floor follows the sound outside speech within a second, and inside speech only downwards.
 * Also tells when the microphone gives nothing at all for three seconds, and when it gives sound again.
 * Errors: none. Not for: sound pressure; a microphone's sensitivity is unknown.
 */
export function createMeter(): Meter {
  let noiseDb: number | undefined;
  let energy = 0;
  let samples = 0;
  let clipped = false;
  let lowest = Infinity;
  let highest = -Infinity;
  let stillSamples = 0;
  let silent = false;

  const watchMicrophone = (frame: Float32Array): MeterEvent | undefined => {
    for (const x of frame) {
      lowest = Math.min(lowest, x);
      highest = Math.max(highest, x);
    }
    stillSamples += frame.length;
    if (highest - lowest >= FLAT_SPAN) {
      lowest = Infinity;
      highest = -Infinity;
      stillSamples = 0;
      const wasSilent = silent;
      silent = false;
      return wasSilent ? { kind: "soundAgain" } : undefined;
    }
    const forMs = (stillSamples / RATE_HZ) * 1000;
    if (silent || forMs < SILENT_MICROPHONE_MS) return undefined;
    silent = true;
    return { kind: "silentMicrophone", forMs: Math.round(forMs) };
  };

  const report = (inSpeech: boolean): MeterEvent => {
    const levelDb = Math.max(LOWEST_DB, 10 * Math.log10(energy / samples + 1e-12));
    const share = 1 - Math.exp(-((samples / RATE_HZ) * 1000) / NOISE_SETTLES_MS);
    if (noiseDb === undefined) noiseDb = levelDb;
    else if (!inSpeech || levelDb < noiseDb) noiseDb += (levelDb - noiseDb) * share;
    const event = { kind: "level", levelDb, noiseDb, clipped } as const;
    energy = 0;
    samples = 0;
    clipped = false;
    return event;
  };

  return {
    measure(frame, bandPower, inSpeech) {
      const fault = watchMicrophone(frame);
      energy += bandPower * frame.length;
      for (const x of frame) if (Math.abs(x) >= CLIPPED_LEVEL) clipped = true;
      samples += frame.length;
      // Rounded to whole frames: with frames of 32 ms a report comes each 192 ms.
      const isDue = ((samples + frame.length) / RATE_HZ) * 1000 > REPORT_MS;
      if (fault === undefined && !isDue) return NO_EVENTS;
      return [...(fault === undefined ? [] : [fault]), ...(isDue ? [report(inSpeech)] : [])];
    },
  };
}
