import { melFilters, type MelFilter } from "../../src/listener/melFilters.ts";
import { createPowerSpectrum } from "../../src/listener/powerSpectrum.ts";

const RATE_HZ = 16_000;
const WINDOW = 400;
const HOP = 160;
const FFT = 512;
const BINS = FFT / 2 + 1;
const BIN_HZ = RATE_HZ / FFT;
const SCALE = 0.4;
const MELS = 64;
/** Above this share of the band the warp bends, so that its end stays where it is. */
const BEND_AT = 0.75;

/** Log-mel energies `[64][frames]` before any mean is taken from them. */
export type RawMel = { readonly mel: Float32Array; readonly frames: number };

/** Where a frequency of this voice lies in a voice of average length: piecewise linear, both ends fixed. */
function warped(hz: number, factor: number): number {
  const top = RATE_HZ / 2;
  const bend = BEND_AT * top * Math.min(1, 1 / factor);
  return hz <= bend ? factor * hz : factor * bend + ((hz - bend) * (top - factor * bend)) / (top - bend);
}

/** The listener's filters with the frequency axis of the sound stretched by `factor`; 1 gives the listener's own. */
function warpedFilters(factor: number): readonly MelFilter[] {
  // In steps of a sixteenth of a bin the filters are found anew at the places that the bins move to.
  const fine = melFilters({
    count: MELS,
    lowHz: 60,
    highHz: 7_800,
    bins: (BINS - 1) * 16 + 1,
    binWidthHz: BIN_HZ / 16,
  });
  const at = (filter: MelFilter, hz: number): number => {
    const place = hz / (BIN_HZ / 16) - filter.firstBin;
    const below = Math.floor(place);
    const [a = 0, b = 0] = [filter.weights[below], filter.weights[below + 1]];
    return a + (b - a) * (place - below);
  };
  if (factor === 1) return melFilters({ count: MELS, lowHz: 60, highHz: 7_800, bins: BINS, binWidthHz: BIN_HZ });
  return fine.map((filter) => {
    const weights = Array.from({ length: BINS }, (_, bin) => at(filter, warped(bin * BIN_HZ, factor)));
    const first = weights.findIndex((w) => w > 0);
    if (first >= 0) {
      const last = weights.findLastIndex((w) => w > 0);
      return { firstBin: first, weights: Float32Array.from(weights.slice(first, last + 1)) };
    }
    const centre = (filter.firstBin + filter.weights.length / 2) * (BIN_HZ / 16);
    const distances = Array.from({ length: BINS }, (_, bin) => Math.abs(warped(bin * BIN_HZ, factor) - centre));
    return { firstBin: distances.indexOf(Math.min(...distances)), weights: Float32Array.of(1) };
  });
}

/** One sound seen through several warps: one power spectrum serves them all. */
export function createWarpedFeatures(factors: readonly number[]): (pcm: Float32Array) => readonly RawMel[] {
  const banks = factors.map(warpedFilters);
  const hann = Float32Array.from({ length: WINDOW }, (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / WINDOW));
  const spectrum = createPowerSpectrum(FFT);
  const signal = new Float32Array(FFT);
  const power = new Float32Array(BINS);
  return (pcm) => {
    const frames = pcm.length < WINDOW ? 0 : 1 + Math.floor((pcm.length - WINDOW) / HOP);
    const mels = banks.map(() => new Float32Array(MELS * frames));
    for (let frame = 0; frame < frames; frame++) {
      for (let i = 0; i < WINDOW; i++) signal[i] = pcm[frame * HOP + i]! * hann[i]!;
      spectrum(signal, power);
      banks.forEach((filters, b) => {
        filters.forEach(({ firstBin, weights }, m) => {
          let energy = 0;
          for (let i = 0; i < weights.length; i++) energy += power[firstBin + i]! * weights[i]!;
          mels[b]![m * frames + frame] = Math.log(Math.fround(energy) + 1e-6);
        });
      });
    }
    return mels.map((mel) => ({ mel, frames }));
  };
}

/** The mean of each filter over all frames of these sounds. */
export function filterMeans(sounds: readonly RawMel[]): Float32Array {
  const sums = new Float64Array(MELS);
  let count = 0;
  for (const { mel, frames } of sounds) {
    count += frames;
    for (let m = 0; m < MELS; m++) for (let t = 0; t < frames; t++) sums[m]! += mel[m * frames + t]!;
  }
  return Float32Array.from(sums, (sum) => sum / Math.max(1, count));
}

/**
 * What the network is given: each filter less a mean. `speaker` is a mean kept from other sounds of this voice; `share`
 * of it is used in the place of the utterance's own, shifted to the utterance's loudness.
 */
export function normalised(raw: RawMel, speaker: Float32Array, share: number): Float32Array<ArrayBuffer> {
  const own = filterMeans([raw]);
  const mean = (of: Float32Array): number => of.reduce((a, b) => a + b, 0) / MELS;
  const shift = mean(own) - mean(speaker);
  const out = new Float32Array(raw.mel.length);
  for (let m = 0; m < MELS; m++) {
    const less = (1 - share) * own[m]! + share * (speaker[m]! + shift);
    for (let t = 0; t < raw.frames; t++) out[m * raw.frames + t] = (raw.mel[m * raw.frames + t]! - less) * SCALE;
  }
  return out;
}
