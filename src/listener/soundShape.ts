const RATE_HZ = 16_000;
const FRAME_SAMPLES = 320; // 20 ms
/** Shares of an utterance's frames: the louder ones are speech, the quietest are what lies behind it. */
const SPEECH_FROM_SHARE = 0.75;
const NOISE_AT_SHARE = 0.1;
const LOWEST_DB = -100;
const CLIPPED_LEVEL = 0.99;
/** A share of an utterance at full scale that is no accident: of overdriven numbers, one in eight was taken wrong (n 16). */
const CLIPPED_SHARE = 0.001;

/** How an utterance sounded, whatever was said. dB are of full scale, full band, RMS. */
export type SoundShape = {
  /** The whole of it, with the background on both sides. */
  readonly lengthMs: number;
  /** Its louder quarter. */
  readonly levelDb: number;
  /** Its quietest tenth. */
  readonly noiseDb: number;
  /** Overdriven: peaks are cut off. */
  readonly clipped: boolean;
};

/**
 * Measures an utterance, 16 kHz, −1…1, with about 0.3 s of background on each side. Total: silence reads −100 dB.
 * Not for: the room between utterances (`hearingMeter.ts`); sound pressure.
 */
export function soundShape(pcm: Float32Array): SoundShape {
  const powers: number[] = [];
  let full = 0;
  for (let at = 0; at + FRAME_SAMPLES <= pcm.length; at += FRAME_SAMPLES) {
    let sum = 0;
    for (let i = at; i < at + FRAME_SAMPLES; i++) {
      sum += pcm[i]! ** 2;
      if (Math.abs(pcm[i]!) >= CLIPPED_LEVEL) full++;
    }
    powers.push(sum / FRAME_SAMPLES);
  }
  powers.sort((a, b) => a - b);
  const loud = powers.slice(Math.floor(powers.length * SPEECH_FROM_SHARE));
  const loudMean = loud.reduce((sum, power) => sum + power, 0) / Math.max(1, loud.length);
  return {
    lengthMs: Math.round((1000 * pcm.length) / RATE_HZ),
    levelDb: decibels(loudMean),
    noiseDb: decibels(powers[Math.floor(powers.length * NOISE_AT_SHARE)] ?? 0),
    clipped: full > CLIPPED_SHARE * pcm.length,
  };
}

const decibels = (power: number): number => Math.max(LOWEST_DB, 10 * Math.log10(power + 1e-12));
