import { createFeatures } from "../../../src/listener/features.ts";
import { resample } from "../../../src/listener/resample.ts";

const BANDS = 64;
const SCALE = 0.4;
/** The sound begins with 0.3 s of background: the noise is measured there. Frames of 10 ms. */
const NOISE_FRAMES = 28;
const OVER_SUBTRACTION = 1.5;
const LEFT_OVER = 0.05;

export type Mel = { readonly mel: Float32Array<ArrayBuffer>; readonly frames: number };
export type Copy = { readonly name: string; readonly of: (pcm: Float32Array, mel: Mel) => Mel };

const { logMel } = createFeatures();

const shifted = (samples: number): Copy => ({
  name: `begun ${samples / 16} ms later`,
  of: (pcm) => logMel(pcm.subarray(samples)),
});

const atSpeed = (percent: number): Copy => ({
  name: `played at ${percent} % speed`,
  of: (pcm) => logMel(resample(pcm, percent, 100)),
});

const mapRows = ({ mel, frames }: Mel, map: (row: Float32Array) => ArrayLike<number>): Mel => {
  const out = new Float32Array(mel.length);
  for (let band = 0; band < BANDS; band++)
    out.set(map(mel.subarray(band * frames, (band + 1) * frames)), band * frames);
  return { mel: out, frames };
};
function meanOf(row: Float32Array): number {
  let sum = 0;
  for (const x of row) sum += x;
  return sum / row.length;
}
const centred = (row: Float32Array): Float32Array => {
  const mean = meanOf(row);
  return row.map((x) => x - mean);
};

/** Spectral subtraction in the bands; it does not care that the features are without their mean. */
const denoised: Copy = {
  name: "noise subtracted",
  of: (_, copied) =>
    mapRows(copied, (row) => {
      const energy = row.map((x) => Math.exp(x / SCALE));
      const noise = meanOf(energy.subarray(0, NOISE_FRAMES));
      return centred(energy.map((e) => SCALE * Math.log(Math.max(e - OVER_SUBTRACTION * noise, LEFT_OVER * e))));
    }),
};

/** The ways of hearing one utterance once more with the same network. */
export const COPIES: readonly Copy[] = [shifted(160), shifted(320), atSpeed(95), atSpeed(105), denoised];
