import { createBargeIn } from "./bargeIn.ts";
import { createCrowd } from "./crowd.ts";
import { FRAME_SAMPLES, HALF_FRAME_SAMPLES } from "./endpoint.ts";
import { createSpeechBand } from "./speechBand.ts";
import type { FrameJudge } from "./vadTrim.ts";

/** Two half frames as they were judged. */
export type JudgedFrame = {
  readonly pcm: Float32Array;
  /** Of speech, whoever speaks. */
  readonly probability: number;
  /** That somebody near speaks; while our own voice may sound, that somebody talks over it. */
  readonly near: number;
  /** Mean square of the speech band. */
  readonly bandPower: number;
};

export type NearVoice = {
  /** Every half frame of the sound in its turn; `isOwn`: as in `BargeIn`. */
  take(half: Float32Array, isOwn: boolean): void;
  /** Judges the two last half frames, after every second one. */
  judge(gated: boolean): Promise<JudgedFrame>;
  /** Judges the two last between these, while our own voice sounds. @returns `near`. */
  judgeBetween(): Promise<number>;
  /** As in `Crowd`. */
  doubts(framesAgo: number): boolean;
};

/**
 * The model, the crowd and our own voice together: how likely it is that somebody near speaks. Frames of the model overlap
 * by half only while our voice sounds, in a second memory of the model: twice the work, and the news is 8 ms sooner in the
 * mean. Errors: rejects as the model does. Not for: where an utterance begins and ends.
 */
export function createNearVoice(vad: FrameJudge): NearVoice {
  const between = vad.another();
  const crowd = createCrowd();
  const bargeIn = createBargeIn();
  const bandPowerOf = createSpeechBand();
  const pcm = new Float32Array(FRAME_SAMPLES);
  let power = 0;
  let powerBefore = 0;
  let taken = 0;
  let judgedBetweenAt = 0;
  return {
    take(half, isOwn) {
      taken++;
      pcm.copyWithin(0, HALF_FRAME_SAMPLES);
      pcm.set(half, HALF_FRAME_SAMPLES);
      powerBefore = power;
      power = bandPowerOf(half);
      bargeIn.measure(half, power, isOwn);
    },
    async judge(gated) {
      const probability = await vad.judge(pcm);
      const bandPower = (powerBefore + power) / 2;
      const near = crowd.weigh(probability, bandPower, gated);
      return { pcm, probability, near: gated ? bargeIn.weigh(near, true) : near, bandPower };
    },
    async judgeBetween() {
      // What it remembers is no longer what came just before.
      if (taken !== judgedBetweenAt + 2) between.reset();
      judgedBetweenAt = taken;
      return bargeIn.weigh(crowd.weighBetween(await between.judge(pcm)), false);
    },
    doubts: (framesAgo) => crowd.doubts(framesAgo),
  };
}
