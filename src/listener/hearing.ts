import { FRAME_SAMPLES } from "./endpoint.ts";
import { createSoundBuffer } from "./hearingBuffer.ts";
import { createHold, type Hold } from "./hearingHeld.ts";
import { createMeter } from "./hearingMeter.ts";
import type { SoundShape } from "./soundShape.ts";
import { OPEN_SILENCE, stepOpen, type OpenState } from "./hearingOpen.ts";
import { PADDING_SAMPLES, type FrameJudge } from "./vadTrim.ts";

const SAMPLES_PER_MS = 16;
const REMEMBERED_SAMPLES = 24_000 * SAMPLES_PER_MS;
/** Our own voice still rings in the room and in the buffers of the device for a moment after it stopped. */
const GATE_TAIL_SAMPLES = 250 * SAMPLES_PER_MS;

/** What the listener made of one utterance. No candidates: nothing in the language, or not to be trusted whole. */
export type HeardSound = {
  readonly candidates: readonly { readonly words: string; readonly score: number }[];
  readonly free?: { readonly score: number; readonly phones: number };
  readonly shape?: SoundShape;
  /** Our own voice sounded at the same time. */
  readonly overlapped?: true;
};

export type HearingOutput =
  | {
      readonly kind: "level";
      readonly levelDb: number;
      readonly noiseDb: number;
      readonly inSpeech: boolean;
      readonly clipped: boolean;
    }
  | { readonly kind: "speechStarted"; readonly atMs: number }
  | { readonly kind: "speechEnded"; readonly atMs: number }
  | { readonly kind: "heard"; readonly heard: HeardSound; readonly endedAtMs: number }
  | { readonly kind: "silentMicrophone"; readonly forMs: number }
  | { readonly kind: "soundAgain" };

export type HearingParts = {
  readonly vad: FrameJudge;
  readonly listen: (pcm: Float32Array) => Promise<HeardSound>;
  readonly emit: (output: HearingOutput) => void;
  /** A model failed. Nothing more will be heard: the owner must build anew and say so. */
  readonly onBroken: (detail: string) => void;
};

export type Hearing = {
  /** Sound in blocks of any size, 16 kHz, one channel. `endsAtMs`: Unix ms at which the block's last sample was heard. */
  push(block: Float32Array, endsAtMs: number): void;
  setMode(mode: "open" | "held"): void;
  hold(down: boolean): void;
  setSpeaking(speaking: boolean): void;
  /** Hears nothing more; what was said before is still given out. */
  close(): void;
  /** Settles when everything pushed so far has been heard or refused. */
  idle(): Promise<void>;
};

/**
 * From sound to utterances: voice activity, end-pointing, the gate for our own voice, held mode, level and faults.
 * Calls are carried out in the order in which they come. Models are given as functions, time comes in with the sound.
 * Errors: a model that rejects ends all hearing through `onBroken`. Not for: meaning.
 */
export function createHearing({ vad, listen, emit, onBroken }: HearingParts): Hearing {
  const sound = createSoundBuffer(REMEMBERED_SAMPLES);
  const meter = createMeter();
  let framesDone = 0;
  let anchorMs = 0;
  let mode: "open" | "held" = "open";
  let open: OpenState = OPEN_SILENCE;
  let hold: Hold | undefined;
  let speaking = false;
  /** Up to here our own voice may be in the sound. */
  let cleanFrom = 0;
  let broken = false;
  let closed = false;
  let steps: Promise<void> = Promise.resolve();
  let decodes: Promise<void> = Promise.resolve();

  const fail = (error: unknown): void => {
    if (broken) return;
    broken = true;
    onBroken(error instanceof Error ? error.message : String(error));
  };
  const inOrder = (step: () => void | Promise<void>): void => {
    steps = steps.then(() => (broken || closed ? undefined : step())).catch(fail);
  };
  const atMs = (position: number): number => Math.round(anchorMs - (sound.end() - position) / SAMPLES_PER_MS);

  const give = (pcm: Float32Array | undefined, endedAtMs: number, overlapped = false): void => {
    const nothing: HeardSound = { candidates: [] };
    decodes = decodes
      .then(() => (broken || pcm === undefined ? nothing : listen(pcm)))
      .then((heard): HeardSound => (overlapped ? { ...heard, overlapped } : heard))
      .then((heard) => void (broken || emit({ kind: "heard", heard, endedAtMs })))
      .catch(fail);
  };

  const stepFrameOpen = (frame: number, probability: number, gated: boolean): void => {
    const [next, event] = stepOpen(open, frame, probability, gated);
    open = next;
    if (event === undefined) return;
    if (event.kind === "started") return emit({ kind: "speechStarted", atMs: atMs(event.first * FRAME_SAMPLES) });
    const endsAt = (event.last + 1) * FRAME_SAMPLES;
    emit({ kind: "speechEnded", atMs: atMs(endsAt) });
    if (event.fate === "drop") return;
    if (event.fate === "refuse") return give(undefined, atMs(endsAt));
    const begins = event.first * FRAME_SAMPLES - PADDING_SAMPLES;
    const doubted = event.fate === "doubt";
    give(
      sound.cut(doubted ? Math.max(begins, 0) : Math.max(begins, cleanFrom), endsAt + PADDING_SAMPLES),
      atMs(endsAt),
      doubted,
    );
  };

  const finishHold = (done: Hold): void => {
    const taken = done.finish(cleanFrom);
    hold = undefined;
    give(taken.fate === "take" ? sound.cut(taken.from, taken.to) : undefined, atMs(taken.speechEnds));
  };

  const stepFrame = async (): Promise<void> => {
    const frame = framesDone;
    const pcm = sound.cut(frame * FRAME_SAMPLES, (frame + 1) * FRAME_SAMPLES);
    const probability = await vad.judge(pcm);
    framesDone++;
    if (speaking) cleanFrom = framesDone * FRAME_SAMPLES + GATE_TAIL_SAMPLES;
    const gated = frame * FRAME_SAMPLES < cleanFrom;
    if (mode === "open") stepFrameOpen(frame, probability, gated);
    else if (hold !== undefined) {
      hold.step(probability, speaking);
      if (hold.isOver(framesDone * FRAME_SAMPLES)) finishHold(hold);
    }
    const inSpeech = mode === "open" ? open.announced : hold !== undefined;
    for (const event of meter.measure(pcm, inSpeech)) emit(event.kind === "level" ? { ...event, inSpeech } : event);
  };

  return {
    push: (block, endsAtMs) =>
      inOrder(async () => {
        sound.append(block);
        anchorMs = endsAtMs;
        while ((framesDone + 1) * FRAME_SAMPLES <= sound.end()) await stepFrame();
      }),
    setMode: (wanted) =>
      inOrder(() => {
        if (wanted === mode) return;
        if (open.announced || hold?.isReleased() === false) emit({ kind: "speechEnded", atMs: atMs(sound.end()) });
        mode = wanted;
        open = { ...OPEN_SILENCE, gated: open.gated };
        hold = undefined;
      }),
    hold: (down) =>
      inOrder(() => {
        if (mode !== "held") return;
        if (down && hold !== undefined && !hold.isReleased()) return;
        if (down) {
          if (hold !== undefined) finishHold(hold);
          hold = createHold(framesDone);
          emit({ kind: "speechStarted", atMs: atMs(sound.end()) });
        } else if (hold !== undefined && !hold.isReleased()) {
          hold.release(sound.end());
          emit({ kind: "speechEnded", atMs: atMs(sound.end()) });
        }
      }),
    setSpeaking: (wanted) => inOrder(() => void (speaking = wanted)),
    close: () => void (closed = true),
    idle: async () => {
      await steps;
      await decodes;
    },
  };
}
