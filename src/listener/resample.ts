/** Below this share of the lower Nyquist frequency the filter is flat; above the whole of it nothing passes. */
const PASSBAND_SHARE = 0.925;
/** Kaiser design for about 80 dB of stop band. */
const KAISER_BETA = 7.86;
const KAISER_ATTENUATION_DB = 80;
/** Rates whose ratio needs more kernel rows than this share rows by linear interpolation (error below −100 dB). */
const MAX_ROWS = 512;

export type Resampler = {
  /** Sound that became computable with this block; the rest waits for the next one. */
  push(block: Float32Array): Float32Array;
  /** The last samples, as if silence followed. The resampler is not to be used afterwards. */
  flush(): Float32Array;
};

/**
 * Changes the sample rate of one channel of sound, block by block, without a delay: output sample n lies at n / toHz.
 *
 * @param fromHz rate of the blocks, Hz, a whole number from 8,000 to 96,000.
 * @param toHz   rate wanted, Hz.
 *
 * Flat to 0.925 of the lower Nyquist frequency (7.4 kHz at 16 kHz), about 80 dB down above it. Any block sizes give the
 * same samples. Errors: a rate that is not a positive whole number throws, as it can only be a programming mistake.
 * Not for: music; more than one channel.
 * Source of the filter: the Kaiser window design formulae of the signal-processing textbooks.
 */
export function createResampler(fromHz: number, toHz: number): Resampler {
  if (!Number.isInteger(fromHz) || !Number.isInteger(toHz) || fromHz <= 0 || toHz <= 0)
    throw new RangeError(`sample rates must be positive whole numbers: ${fromHz}, ${toHz}`);
  if (fromHz === toHz) return { push: (block) => block.slice(), flush: () => new Float32Array(0) };

  const { rows, taps, half, kernel } = designKernel(fromHz, toHz);
  // Sound not yet done with; `held[0]` is input sample `heldFrom`. The zeros stand for what came before the start.
  let held = new Float32Array(half);
  let heldFrom = -half;
  let nextOut = 0;
  let received = 0;

  const produce = (untilOut: number): Float32Array => {
    const made = new Float32Array(Math.max(0, untilOut - nextOut));
    for (let k = 0; k < made.length; k++, nextOut++) {
      const scaled = nextOut * fromHz; // whole numbers, so that the position never drifts
      const base = Math.floor(scaled / toHz);
      const row = ((scaled - base * toHz) / toHz) * rows;
      const rowAt = Math.floor(row + 1e-9);
      const share = row - rowAt;
      const from = base - half + 1 - heldFrom;
      made[k] = dot(kernel, rowAt * taps, held, from, taps);
      if (share > 1e-9) made[k] = made[k]! * (1 - share) + dot(kernel, (rowAt + 1) * taps, held, from, taps) * share;
    }
    const keepFrom = Math.min(Math.floor((nextOut * fromHz) / toHz) - half + 1, heldFrom + held.length);
    if (keepFrom > heldFrom) {
      held = held.slice(keepFrom - heldFrom);
      heldFrom = keepFrom;
    }
    return made;
  };

  const append = (block: Float32Array): void => {
    const joined = new Float32Array(held.length + block.length);
    joined.set(held);
    joined.set(block, held.length);
    held = joined;
  };

  return {
    push(block) {
      append(block);
      received += block.length;
      // Output n needs input up to floor(n · from / to) + half.
      return produce(Math.max(nextOut, Math.ceil(((received - half) * toHz) / fromHz)));
    },
    flush() {
      append(new Float32Array(half + 1));
      return produce(Math.ceil((received * toHz) / fromHz));
    },
  };
}

/** All of a recording at once; see `createResampler`. The result has ceil(length · toHz / fromHz) samples. */
export function resample(samples: Float32Array, fromHz: number, toHz: number): Float32Array {
  const resampler = createResampler(fromHz, toHz);
  const head = resampler.push(samples);
  const tail = resampler.flush();
  const all = new Float32Array(head.length + tail.length);
  all.set(head);
  all.set(tail, head.length);
  return all;
}

function dot(kernel: Float32Array, kernelAt: number, sound: Float32Array, soundAt: number, count: number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) sum += kernel[kernelAt + i]! * sound[soundAt + i]!;
  return sum;
}

/** One row of taps per sub-sample position, one more row so that the last has a neighbour. */
function designKernel(fromHz: number, toHz: number) {
  const rows = Math.min(MAX_ROWS, toHz / gcd(fromHz, toHz));
  const edge = Math.min(fromHz, toHz) / 2 / fromHz; // cycles per input sample
  const width = edge * (1 - PASSBAND_SHARE);
  const cutoff = edge - width / 2;
  const half = Math.ceil((KAISER_ATTENUATION_DB - 7.95) / (2 * Math.PI * 2.285 * width) / 2) + 1;
  const taps = 2 * half;
  const kernel = new Float32Array((rows + 1) * taps);
  for (let row = 0; row <= rows; row++) {
    let sum = 0;
    for (let i = 0; i < taps; i++) {
      const x = i - half + 1 - row / rows; // distance from the wanted position, input samples
      const value = 2 * cutoff * sinc(2 * cutoff * x) * kaiser(x / half);
      kernel[row * taps + i] = value;
      sum += value;
    }
    for (let i = 0; i < taps; i++) kernel[row * taps + i] = kernel[row * taps + i]! / sum;
  }
  return { rows, taps, half, kernel };
}

const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));

const kaiser = (x: number): number =>
  Math.abs(x) >= 1 ? 0 : besselI0(KAISER_BETA * Math.sqrt(1 - x * x)) / besselI0(KAISER_BETA);

/** Modified Bessel function of the first kind, order 0, by its power series. */
function besselI0(x: number): number {
  let sum = 1;
  let term = 1;
  for (let k = 1; term > sum * 1e-12; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}
