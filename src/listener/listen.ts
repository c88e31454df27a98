import { createFeatures } from "./features.ts";
import { goesOn, type GoesOn } from "./goesOn.ts";
import { OUTPUT_COUNT } from "./phones.ts";
import { freePath, logSoftmax, type FreePath } from "./phoneScores.ts";
import type { Candidate, Search } from "./search.ts";
import { soundShape, type SoundShape } from "./soundShape.ts";

/** Mel frames in each network output. */
const FRAMES_PER_OUTPUT = 3;

/** The network: mel `[64][frames]` in, logits `[ceil(frames / 3)][40]` out. */
export type Acoustic = (mel: Float32Array<ArrayBuffer>, frames: number) => Promise<Float32Array>;

export type Listened = {
  /** Best first, distinct words; empty when no path of the grammar fits. */
  readonly candidates: readonly Candidate[];
  readonly free: FreePath;
  /** Network outputs, 30 ms each. */
  readonly outputs: number;
  readonly shape: SoundShape;
  /** Might it be only the first part of something? */
  readonly goesOn: GoesOn;
};

export type Listener = {
  /**
   * @param pcm one utterance, mono, 16 kHz, −1…1, with about 0.3 s of background on each side. Sound shorter than
   *            one window (25 ms) has no candidates. What is no finite number counts as silence.
   */
  listen(pcm: Float32Array): Promise<Listened>;
};

/**
 * Sound to words: features, network, search. Rejects when the network rejects, or answers in another shape.
 * Not for: deciding whether the words are to be believed (margins, thresholds).
 */
export function createListener({
  acoustic,
  search,
}: {
  readonly acoustic: Acoustic;
  readonly search: Search;
}): Listener {
  const features = createFeatures();
  return {
    async listen(sound) {
      const pcm = sound.every(Number.isFinite) ? sound : sound.map((x) => (Number.isFinite(x) ? x : 0));
      const shape = soundShape(pcm);
      const { mel, frames } = features.logMel(pcm);
      if (frames === 0) return { candidates: [], free: { score: 0, phones: 0 }, outputs: 0, shape, goesOn: "no" };
      const outputs = Math.ceil(frames / FRAMES_PER_OUTPUT);
      const logits = await acoustic(mel, frames);
      if (logits.length !== outputs * OUTPUT_COUNT) {
        throw new Error(`the network gave ${logits.length} numbers, expected ${outputs} × ${OUTPUT_COUNT}`);
      }
      const logProbs = logSoftmax(logits, outputs);
      const candidates = search.decode(logProbs, outputs);
      const free = freePath(logProbs, outputs);
      return { candidates, free, outputs, shape, goesOn: goesOn(candidates, search.ahead(), free) };
    },
  };
}
