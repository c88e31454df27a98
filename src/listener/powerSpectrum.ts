/**
 * Power spectrum of a real signal of `size` samples (a power of two), bins 0 to size / 2.
 *
 * Even and odd samples are taken as one complex signal of half the length, transformed in place (radix 2,
 * Cooley and Tukey's scheme), and untangled at the end. Tables are made once; calls allocate nothing.
 */
export function createPowerSpectrum(size: number): (signal: Float32Array, power: Float32Array) => void {
  const half = size / 2;
  const re = new Float64Array(half);
  const im = new Float64Array(half);
  const mirrored = mirroredIndices(half);
  const cos = Float64Array.from({ length: size }, (_, i) => Math.cos((2 * Math.PI * i) / size));
  const sin = Float64Array.from({ length: size }, (_, i) => -Math.sin((2 * Math.PI * i) / size));

  const transform = (): void => {
    for (let span = 1; span < half; span *= 2) {
      const turn = size / (2 * span);
      for (let block = 0; block < half; block += 2 * span) {
        for (let i = 0; i < span; i++) {
          const a = block + i;
          const b = a + span;
          const c = cos[i * turn]!;
          const s = sin[i * turn]!;
          const bRe = re[b]! * c - im[b]! * s;
          const bIm = re[b]! * s + im[b]! * c;
          re[b] = re[a]! - bRe;
          im[b] = im[a]! - bIm;
          re[a]! += bRe;
          im[a]! += bIm;
        }
      }
    }
  };

  return (signal, power) => {
    for (let i = 0; i < half; i++) {
      const to = mirrored[i]!;
      re[to] = signal[2 * i]!;
      im[to] = signal[2 * i + 1]!;
    }
    transform();
    for (let k = 0; k <= half; k++) {
      const a = k % half;
      const b = (half - k) % half;
      const evenRe = (re[a]! + re[b]!) / 2;
      const evenIm = (im[a]! - im[b]!) / 2;
      const oddRe = (im[a]! + im[b]!) / 2;
      const oddIm = (re[b]! - re[a]!) / 2;
      const c = cos[k]!;
      const s = sin[k]!;
      const sumRe = evenRe + oddRe * c - oddIm * s;
      const sumIm = evenIm + oddRe * s + oddIm * c;
      power[k] = sumRe * sumRe + sumIm * sumIm;
    }
  };
}

/** Each index with its bits in the opposite order. */
function mirroredIndices(length: number): Int32Array {
  const mirrored = new Int32Array(length);
  for (let i = 1; i < length; i++) mirrored[i] = (mirrored[i >> 1]! >> 1) | (i & 1 ? length >> 1 : 0);
  return mirrored;
}
