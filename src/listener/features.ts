import { melFilters } from "./melFilters.ts";
import { createPowerSpectrum } from "./powerSpectrum.ts";

const SAMPLE_RATE_HZ = 16_000;
const WINDOW_SAMPLES = 400;
const HOP_SAMPLES = 160;
const FFT_SAMPLES = 512;
const MEL_COUNT = 64;
/** Added to each filter's energy, so that digital silence has a logarithm. */
const ENERGY_FLOOR = Math.fround(1e-6);
/** Brings the features to the spread that the network was trained with. */
const SCALE = Math.fround(0.4);

export type Features = {
  /**
   * Normalised log-mel energies of a whole utterance.
   *
   * @param pcm mono, 16 kHz, −1…1, with about 0.3 s of background on each side: the mean of each filter is taken
   *            over all of it.
   * @returns mel `[64][frames]`, one filter after the other. Sound shorter than one window has 0 frames.
   */
  logMel(pcm: Float32Array): { readonly mel: Float32Array<ArrayBuffer>; readonly frames: number };
};

/**
 * What the network hears. Source: the definition in the listener's card, checked against its test vectors.
 *
 * Rounds to single precision where that definition does: the network quantises what it is given, and a difference of
 * 1e-5 at its door can move a log score by 0.3.
 */
export function createFeatures(): Features {
  const bins = FFT_SAMPLES / 2 + 1;
  const filters = melFilters({
    count: MEL_COUNT,
    lowHz: 60,
    highHz: 7_800,
    bins,
    binWidthHz: SAMPLE_RATE_HZ / FFT_SAMPLES,
  });
  const hann = Float32Array.from(
    { length: WINDOW_SAMPLES },
    (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / WINDOW_SAMPLES),
  );
  const powerSpectrum = createPowerSpectrum(FFT_SAMPLES);
  const signal = new Float32Array(FFT_SAMPLES);
  const power = new Float32Array(bins);

  return {
    logMel(pcm) {
      const frames = pcm.length < WINDOW_SAMPLES ? 0 : 1 + Math.floor((pcm.length - WINDOW_SAMPLES) / HOP_SAMPLES);
      const mel = new Float32Array(MEL_COUNT * frames);
      for (let frame = 0; frame < frames; frame++) {
        const from = frame * HOP_SAMPLES;
        for (let i = 0; i < WINDOW_SAMPLES; i++) signal[i] = pcm[from + i]! * hann[i]!;
        powerSpectrum(signal, power);
        for (let m = 0; m < MEL_COUNT; m++) {
          const { firstBin, weights } = filters[m]!;
          let energy = 0;
          for (let i = 0; i < weights.length; i++) energy += power[firstBin + i]! * weights[i]!;
          mel[m * frames + frame] = Math.log(Math.fround(Math.fround(energy) + ENERGY_FLOOR));
        }
      }
      for (let m = 0; m < MEL_COUNT; m++) normalise(mel.subarray(m * frames, (m + 1) * frames));
      return { mel, frames };
    },
  };
}

function normalise(row: Float32Array): void {
  let sum = 0;
  for (let i = 0; i < row.length; i++) sum = Math.fround(sum + row[i]!);
  const mean = Math.fround(sum / row.length);
  for (let i = 0; i < row.length; i++) row[i] = Math.fround(row[i]! - mean) * SCALE;
}
