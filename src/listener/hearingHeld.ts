import { FRAME_MS, FRAME_SAMPLES } from "./endpoint.ts";
import { PADDING_SAMPLES, speechSpan } from "./vadTrim.ts";

const LONGEST_FRAMES = Math.floor(20_000 / FRAME_MS);
/** The press itself silences our voice; what is left of it at the start does no harm. */
const OWN_VOICE_ALLOWED_FRAMES = Math.floor(400 / FRAME_MS);

export type Hold = {
  step(probability: number, ownVoice: boolean): void;
  release(position: number): void;
  isReleased(): boolean;
  /** The background after the release is there too. */
  isOver(position: number): boolean;
  /** Positions in samples. `cleanFrom`: sound before it may hold our own voice and is kept out of the background. */
  finish(cleanFrom: number): {
    readonly fate: "take" | "refuse";
    readonly from: number;
    readonly to: number;
    readonly speechEnds: number;
  };
};

/**
 * One utterance from press to release, with 0.3 s on both sides, cut to the speech in it where there is any.
 * Refused as a whole when it ran past 20 s or our own voice sounded in it.
 */
export function createHold(firstFrame: number): Hold {
  const probabilities: number[] = [];
  let ownVoiceLate = false;
  let releasedAt: number | undefined;
  return {
    step(probability, ownVoice) {
      if (ownVoice && probabilities.length >= OWN_VOICE_ALLOWED_FRAMES) ownVoiceLate = true;
      // Beyond the limit nothing is kept, as nothing will be used.
      if (probabilities.length <= LONGEST_FRAMES) probabilities.push(probability);
    },
    release(position) {
      releasedAt = position;
    },
    isReleased: () => releasedAt !== undefined,
    isOver: (position) => releasedAt !== undefined && position >= releasedAt + PADDING_SAMPLES,
    finish(cleanFrom) {
      const span = speechSpan(probabilities) ?? { first: 0, last: Math.max(0, probabilities.length - 1) };
      const speechStarts = (firstFrame + span.first) * FRAME_SAMPLES;
      const speechEnds = (firstFrame + span.last + 1) * FRAME_SAMPLES;
      const earliest = Math.min(Math.max(speechStarts - PADDING_SAMPLES, cleanFrom), speechStarts);
      const fate = ownVoiceLate || probabilities.length > LONGEST_FRAMES ? "refuse" : "take";
      return { fate, from: Math.max(0, earliest), to: speechEnds + PADDING_SAMPLES, speechEnds };
    },
  };
}
