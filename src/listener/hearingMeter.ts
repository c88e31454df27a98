const RATE_HZ = 16_000;
/** Most of the energy of speech; rumble of rotors and wheels lies below. */
const BAND_FROM_HZ = 200;
const BAND_TO_HZ = 4_000;
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

export type Meter = { measure(frame: Float32Array, inSpeech: boolean): readonly MeterEvent[] };

/**
 * Level of the speech band and its noise floor, about five times a second, in dB relative to full scale (RMS; a full-scale
 * sine reads −3). The floor follows the sound outside speech within a second, and inside speech only downwards.
 * Also tells when the microphone gives nothing at all for three seconds, and when it gives sound again.
 * Errors: none. Not for: sound pressure; a microphone's sensitivity is unknown.
 */
export function createMeter(): Meter {
  const highPass = createBiquad("high", BAND_FROM_HZ);
  const lowPass = createBiquad("low", BAND_TO_HZ);
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
    measure(frame, inSpeech) {
      const events: MeterEvent[] = [];
      const fault = watchMicrophone(frame);
      if (fault !== undefined) events.push(fault);
      for (const x of frame) {
        energy += lowPass(highPass(x)) ** 2;
        if (Math.abs(x) >= CLIPPED_LEVEL) clipped = true;
      }
      samples += frame.length;
      // Rounded to whole frames: with frames of 32 ms a report comes each 192 ms.
      if (((samples + frame.length) / RATE_HZ) * 1000 > REPORT_MS) events.push(report(inSpeech));
      return events;
    },
  };
}

/** Second-order Butterworth section by the bilinear transform (textbook form), at 16 kHz. */
function createBiquad(kind: "high" | "low", cornerHz: number): (x: number) => number {
  const k = Math.tan((Math.PI * cornerHz) / RATE_HZ);
  const norm = 1 / (1 + Math.SQRT2 * k + k * k);
  const b0 = kind === "low" ? k * k * norm : norm;
  const b1 = kind === "low" ? 2 * b0 : -2 * b0;
  const a1 = 2 * (k * k - 1) * norm;
  const a2 = (1 - Math.SQRT2 * k + k * k) * norm;
  let z1 = 0;
  let z2 = 0;
  return (x) => {
    const y = b0 * x + z1;
    z1 = b1 * x - a1 * y + z2;
    z2 = b0 * x - a2 * y;
    return y;
  };
}
