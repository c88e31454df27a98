import { FRAME_SAMPLES } from "./endpoint.ts";

/** Gives the probability of speech in a frame of 512 samples. Remembers what came before until `reset`. */
export type FrameJudge = {
  judge(frame: Float32Array): Promise<number>;
  reset(): void;
  /** The same model with a memory of its own. */
  another(): FrameJudge;
};

/** The network was trained with 0.05 to 1.6 s of background around speech; its card asks for about this much: 0.3 s. */
export const PADDING_SAMPLES = 4_800;
/** Lower than in open listening: the user said where the utterance is, so losing a soft word is the only danger. */
const HELD_SPEECH_PROBABILITY = 0.2;
const QUIET_SAMPLES = 800;
const QUIET_STEP_SAMPLES = 160;

/** First and last frame that may be speech; undefined when there is none. */
export function speechSpan(
  probabilities: readonly number[],
): { readonly first: number; readonly last: number } | undefined {
  const first = probabilities.findIndex((p) => p >= HELD_SPEECH_PROBABILITY);
  if (first < 0) return undefined;
  return { first, last: probabilities.findLastIndex((p) => p >= HELD_SPEECH_PROBABILITY) };
}

/**
 * Gives a recording of one utterance 0.3 s of background on each side of its speech: more is cut off, and what is missing
 * is made from the recording's own quietest 50 ms. A recording without speech counts as speech from end to end.
 * 16 kHz, one channel. Rejects when the model fails. Not for: live sound, which always has its own background.
 *
 * Measured on single words cut close (n = 91): right above both thresholds 44 without the added background, 86 with it;
 * on whole numbers of people, quiet to 0 dB (n = 51), no change.
 */
export async function frameSpeech(pcm: Float32Array, vad: FrameJudge): Promise<Float32Array> {
  vad.reset();
  const probabilities: number[] = [];
  for (let at = 0; at + FRAME_SAMPLES <= pcm.length; at += FRAME_SAMPLES)
    probabilities.push(await vad.judge(pcm.subarray(at, at + FRAME_SAMPLES)));
  const span = speechSpan(probabilities);
  const from = span === undefined ? 0 : span.first * FRAME_SAMPLES;
  const to = span === undefined ? pcm.length : Math.min(pcm.length, (span.last + 1) * FRAME_SAMPLES);
  return withBackground(pcm, from - PADDING_SAMPLES, to + PADDING_SAMPLES);
}

/** The sound from one position to another, which may lie outside it. */
function withBackground(pcm: Float32Array, from: number, to: number): Float32Array {
  const quietAt = quietest(pcm);
  const period = Math.min(QUIET_SAMPLES, pcm.length);
  const framed = new Float32Array(to - from);
  for (let i = 0; i < framed.length; i++) {
    const at = from + i;
    if (at >= 0 && at < pcm.length) framed[i] = pcm[at]!;
    else if (period > 0) framed[i] = pcm[quietAt + mirrored(at < 0 ? -at - 1 : at - pcm.length, period)]!;
  }
  return framed;
}

/** Runs there and back, so that the pieces meet without a click. */
function mirrored(step: number, period: number): number {
  const place = step % (2 * period);
  return place < period ? place : 2 * period - 1 - place;
}

/** Start of the 50 ms with the least energy. */
function quietest(pcm: Float32Array): number {
  let least = Infinity;
  let at = 0;
  for (let start = 0; start + QUIET_SAMPLES <= pcm.length; start += QUIET_STEP_SAMPLES) {
    let energy = 0;
    for (let i = start; i < start + QUIET_SAMPLES; i++) energy += pcm[i]! ** 2;
    if (energy < least) {
      least = energy;
      at = start;
    }
  }
  return at;
}
