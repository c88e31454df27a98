import { createHearing } from "../../../src/listener/hearing.ts";
import type { FrameJudge } from "../../../src/listener/vadTrim.ts";

/** Smaller than half a frame of voice activity, so that what is heard is known as soon as it can be. */
const BLOCK_SAMPLES = 128;

/**
 * When our voice would be cut, in samples of the sound that were needed to know it: the detector alone, without the way to
 * it and back. Our voice sounds from `ownFrom` on; once cut, it sounds again when whoever talked is done.
 */
export async function cutsOver(pcm: Float32Array, ownFrom: number, vad: FrameJudge): Promise<readonly number[]> {
  const cuts: number[] = [];
  let at = 0;
  const hearing = createHearing({
    vad,
    listen: () => Promise.resolve({ candidates: [] }),
    emit: ({ kind }) => {
      if (kind === "speechStarted" && at > ownFrom) {
        cuts.push(at);
        hearing.setSpeaking(false);
      } else if (kind === "speechEnded" && at > ownFrom) hearing.setSpeaking(true);
    },
    onBroken: (detail) => {
      throw new Error(detail);
    },
  });
  while (at < pcm.length) {
    if (at <= ownFrom && ownFrom < at + BLOCK_SAMPLES) hearing.setSpeaking(true);
    const block = pcm.subarray(at, at + BLOCK_SAMPLES);
    at += block.length;
    hearing.push(block, at / 16);
    await hearing.idle();
  }
  return cuts;
}
