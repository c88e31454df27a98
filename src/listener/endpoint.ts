/** One frame of voice activity: 512 samples at 16 kHz. */
export const FRAME_MS = 32;
export const FRAME_SAMPLES = 512;
/** Frames may overlap by so much. */
export const HALF_FRAME_SAMPLES = FRAME_SAMPLES / 2;

export type EndpointSettings = {
  /** Speech may begin at this probability, and goes on down to the lower one. */
  readonly startProbability: number;
  readonly stayProbability: number;
  /** Frames in a row that make a beginning. */
  readonly startFrames: number;
  /** This much without speech is an end. Shorter pauses stand inside numbers. */
  readonly endSilenceMs: number;
  /** Speech shorter than this is a click or a cough. */
  readonly minSpeechMs: number;
  readonly maxSpeechMs: number;
};

/**
 * Open listening. Probabilities and times are this project's choice. The silence was measured with the voice activity
 * model on 175 read and joined numbers of real people, quiet to 0 dB: the longest pause inside each was 0.22 s in 95 %,
 * 0.29 s in 99 % and 0.54 s in the worst; 550 ms cut none of them in two, 450 ms one, 250 ms five.
 */
export const OPEN_ENDPOINT: EndpointSettings = {
  startProbability: 0.5,
  stayProbability: 0.35,
  startFrames: 3,
  endSilenceMs: 550,
  minSpeechMs: 160,
  maxSpeechMs: 12_000,
};

/**
 * While our own voice sounds: one frame that is surely speech silences it, as more would make a person wait. What counts as
 * sure then, and what it was measured on, is in `bargeIn.ts`.
 */
export const BARGE_IN_ENDPOINT: EndpointSettings = { ...OPEN_ENDPOINT, startProbability: 0.9, startFrames: 1 };

/** Frames are counted from the first one stepped. `first` and `last` are the first and last frames with speech. */
export type EndpointState =
  | { readonly phase: "silence" }
  | { readonly phase: "rising"; readonly first: number; readonly frames: number }
  | { readonly phase: "speech"; readonly first: number; readonly last: number }
  /** It ended, but may go on until that frame; `frames` of speech in a row were seen since. */
  | {
      readonly phase: "lingering";
      readonly first: number;
      readonly last: number;
      readonly until: number;
      readonly frames: number;
    };

export type EndpointEvent =
  | { readonly kind: "started"; readonly first: number }
  | {
      readonly kind: "ended";
      readonly first: number;
      readonly last: number;
      /** long: it never paused; a piece of it could be half a number, so nothing of it may be taken. */
      readonly length: "short" | "fit" | "long";
    }
  /** Nothing followed what might have gone on. */
  | { readonly kind: "expired" };

export const SILENCE: EndpointState = { phase: "silence" };

/**
 * Finds where utterances begin and end. Pure: one frame's probability of speech in, next state and at most one event out.
 *
 * @param frame             number of this frame; one more than at the last step.
 * @param speechProbability 0 to 1, from the voice activity model.
 *
 * Hysteresis: a beginning needs `startFrames` frames in a row, the first at `startProbability`; inside speech the lower
 * `stayProbability` is enough. Errors: none. Not for: cutting sound (that is the caller's, with background on each side).
 */
export function stepEndpoint(
  state: EndpointState,
  frame: number,
  speechProbability: number,
  settings: EndpointSettings,
): readonly [EndpointState, EndpointEvent | undefined] {
  const stays = speechProbability >= settings.stayProbability;
  switch (state.phase) {
    case "silence":
      if (speechProbability < settings.startProbability) return [state, undefined];
      return begin(frame, frame, 1, settings);
    case "rising":
      if (!stays) return [SILENCE, undefined];
      return begin(state.first, frame, state.frames + 1, settings);
    case "speech": {
      if (stays) return [{ ...state, last: frame }, undefined];
      if ((frame - state.last) * FRAME_MS < settings.endSilenceMs) return [state, undefined];
      return [SILENCE, { kind: "ended", first: state.first, last: state.last, length: lengthOf(state, settings) }];
    }
    case "lingering": {
      const { first, until } = state;
      const isSpeech = stays && (state.frames > 0 || speechProbability >= settings.startProbability);
      const frames = isSpeech ? state.frames + 1 : 0;
      if (frames >= settings.startFrames) return [{ phase: "speech", first, last: frame }, undefined];
      return frames === 0 && frame >= until ? [SILENCE, { kind: "expired" }] : [{ ...state, frames }, undefined];
    }
  }
}

/**
 * After an end: speech that begins again within `waitMs` of it belongs to the same utterance, which then ends anew with
 * the same first frame. Otherwise `expired` says that nothing came.
 */
export function lingerAfter(
  { first, last }: { readonly first: number; readonly last: number },
  waitMs: number,
): EndpointState {
  return { phase: "lingering", first, last, until: last + Math.ceil(waitMs / FRAME_MS), frames: 0 };
}

function begin(first: number, frame: number, frames: number, settings: EndpointSettings) {
  if (frames < settings.startFrames) return [{ phase: "rising", first, frames }, undefined] as const;
  return [
    { phase: "speech", first, last: frame },
    { kind: "started", first },
  ] as const;
}

function lengthOf(speech: { readonly first: number; readonly last: number }, settings: EndpointSettings) {
  const lengthMs = (speech.last - speech.first + 1) * FRAME_MS;
  if (lengthMs < settings.minSpeechMs) return "short";
  return lengthMs > settings.maxSpeechMs ? "long" : "fit";
}
