/** A triangular filter: weights of the bins from `firstBin` on. */
export type MelFilter = { readonly firstBin: number; readonly weights: Float32Array };

const hzToMel = (hz: number): number => 1127 * Math.log(1 + hz / 700);
const melToHz = (mel: number): number => 700 * (Math.exp(mel / 1127) - 1);

/**
 * Triangles of height 1 with centres equally far apart in mel; one that catches no bin takes the nearest.
 * Source: the definition that the network was trained with.
 */
export function melFilters(spec: {
  readonly count: number;
  readonly lowHz: number;
  readonly highHz: number;
  readonly bins: number;
  readonly binWidthHz: number;
}): readonly MelFilter[] {
  const lowMel = hzToMel(spec.lowHz);
  const stepMel = (hzToMel(spec.highHz) - lowMel) / (spec.count + 1);
  return Array.from({ length: spec.count }, (_, i) => {
    const [from = 0, peak = 0, to = 0] = [i, i + 1, i + 2].map((edge) => melToHz(lowMel + edge * stepMel));
    const weights = Array.from({ length: spec.bins }, (_, bin) => {
      const hz = bin * spec.binWidthHz;
      return Math.max(0, Math.min((hz - from) / (peak - from), (to - hz) / (to - peak)));
    });
    const firstBin = weights.findIndex((w) => w > 0);
    if (firstBin < 0) return { firstBin: Math.round(peak / spec.binWidthHz), weights: Float32Array.of(1) };
    const lastBin = weights.findLastIndex((w) => w > 0);
    return { firstBin, weights: Float32Array.from(weights.slice(firstBin, lastBin + 1)) };
  });
}
