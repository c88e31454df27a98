import { BARGE_IN_ENDPOINT, FRAME_MS, FRAME_SAMPLES, HALF_FRAME_SAMPLES } from "./endpoint.ts";
import { isFaint } from "./faintVoice.ts";
import type { GoesOn } from "./goesOn.ts";
import { createSoundBuffer } from "./hearingBuffer.ts";
import { createHold, type Hold } from "./hearingHeld.ts";
import { createMeter } from "./hearingMeter.ts";
import { m1 } from "./margins.ts";
import type { SoundShape } from "./soundShape.ts";
import { createNearVoice } from "./nearVoice.ts";
import { awaitMore, OPEN_SILENCE, stepOpen, type OpenEvent, type OpenState } from "./hearingOpen.ts";
import { PADDING_SAMPLES, type FrameJudge } from "./vadTrim.ts";

const SAMPLES_PER_MS = 16;
const REMEMBERED_SAMPLES = 24_000 * SAMPLES_PER_MS;
/** Our own voice still rings in the room and in the buffers of the device for a moment after it stopped. */
const GATE_TAIL_SAMPLES = 250 * SAMPLES_PER_MS;
/**
 * After the last word of what might go on. This project's choice: somebody waits for the answer to a whole statement, so
 * not as long as for half of one, to which there is none. Eight statements in three made voices (n 24), broken by a pause
 * of 0.4, 0.7, 0.9 and 1.2 s: recorded as another value 4, 12, 12 and 12 when every end was final, 0, 0, 2 and 10 so,
 * and all of these were asked whole after.
 */
const WAIT_MS: Readonly<Record<Exclude<GoesOn, "no">, number>> = { may: 1_200, must: 1_600 };

/** The longest silence over which a number that was given out may still be going on: somebody reads it off a display. */
const LATE_FRAMES = Math.floor(3_000 / FRAME_MS);
/** What fits the language worse than this by itself is heard once more with what came before it. */
const UNFIT_M1 = -0.3;

/** What the listener made of a stretch of sound. No candidates: nothing in the language, or not to be trusted whole. */
type HeardWords = {
  readonly candidates: readonly { readonly words: string; readonly score: number }[];
  readonly free?: { readonly score: number; readonly phones: number };
  readonly shape?: SoundShape;
};

/** One utterance. */
export type HeardSound = HeardWords & {
  /** Our own voice sounded at the same time. */
  readonly overlapped?: true;
  /** The last utterance and this one as one, where the last was given out but might have been going on. */
  readonly withLast?: HeardWords;
};

/** Fresh from the listener, which also knows whether it might be only the first part of something. */
export type ListenedSound = HeardWords & { readonly goesOn?: GoesOn };

const NOTHING: ListenedSound = { candidates: [] };
type Ended = Extract<OpenEvent, { readonly kind: "ended" }>;

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
  readonly listen: (pcm: Float32Array) => Promise<ListenedSound>;
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
  const half = new Float32Array(HALF_FRAME_SAMPLES);
  const voice = createNearVoice(vad);
  const meter = createMeter();
  let halvesDone = 0;
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
  /** Heard, and given out when nothing follows it. */
  let kept: (Extract<HearingOutput, { readonly kind: "heard" }> & { readonly ended: Ended }) | undefined;
  /** Given out, and nothing has followed it yet. */
  let unfollowed: Ended | undefined;
  let steps: Promise<void> = Promise.resolve();

  const fail = (error: unknown): void => {
    if (broken) return;
    broken = true;
    onBroken(error instanceof Error ? error.message : String(error));
  };
  const inOrder = (step: () => void | Promise<void>): void => {
    steps = steps.then(() => (broken || closed ? undefined : step())).catch(fail);
  };
  const atMs = (position: number): number => Math.round(anchorMs - (sound.end() - position) / SAMPLES_PER_MS);

  const endOpen = (endedAtMs: number, heard?: HeardSound): void => {
    kept = undefined;
    emit({ kind: "speechEnded", atMs: endedAtMs });
    if (heard !== undefined) emit({ kind: "heard", heard, endedAtMs });
  };

  /** What is too faint is heard as nothing; its shape says why. */
  const recognise = async (from: number, to: number): Promise<ListenedSound> => {
    const listened = await listen(sound.cut(from, to));
    const { shape } = listened;
    return shape !== undefined && isFaint(shape) ? { ...NOTHING, shape } : listened;
  };

  const heardWithLast = async (before: Ended | undefined, event: Ended, { candidates, free }: HeardWords) => {
    if (before === undefined || event.first - before.last > LATE_FRAMES) return undefined;
    const [best] = candidates;
    if (best !== undefined && free !== undefined && m1(best.score, free) >= UNFIT_M1) return undefined;
    const from = before.first * FRAME_SAMPLES - PADDING_SAMPLES;
    const { goesOn: _, ...whole } = await recognise(from, (event.last + 1) * FRAME_SAMPLES + PADDING_SAMPLES);
    return whole.candidates.length > 0 ? whole : undefined;
  };

  /** Frames wait while an utterance is recognised: what follows it depends on what it was. */
  const finishOpen = async (event: Ended): Promise<void> => {
    const endsAt = (event.last + 1) * FRAME_SAMPLES;
    const endedAtMs = atMs(endsAt);
    if (event.fate === "drop") return endOpen(endedAtMs);
    const before = unfollowed;
    unfollowed = undefined;
    const isDoubtedEnd = voice.doubts(framesDone - event.first);
    if (event.fate === "refuse" || isDoubtedEnd) return endOpen(endedAtMs, NOTHING);
    const begins = event.first * FRAME_SAMPLES - PADDING_SAMPLES;
    const from = event.fate === "doubt" ? begins : Math.max(begins, cleanFrom);
    const { goesOn = "no", ...alone } = await recognise(from, endsAt + PADDING_SAMPLES);
    const withLast = await heardWithLast(before, event, alone);
    const heard: HeardSound = withLast === undefined ? alone : { ...alone, withLast };
    if (event.fate === "doubt") return endOpen(endedAtMs, { ...heard, overlapped: true });
    if (goesOn === "no" || closed) return endOpen(endedAtMs, heard);
    kept = { kind: "heard", heard, endedAtMs, ended: event };
    open = awaitMore(open, event, WAIT_MS[goesOn]);
  };

  const stepFrameOpen = async (frame: number, probability: number, gated: boolean): Promise<void> => {
    const [next, event] = stepOpen(open, frame, probability, gated);
    open = next;
    if (event?.kind === "started") emit({ kind: "speechStarted", atMs: atMs(event.first * FRAME_SAMPLES) });
    else if (event?.kind === "ended") await finishOpen(event);
    else if (event?.kind === "expired" && kept !== undefined) {
      unfollowed = kept.ended;
      endOpen(kept.endedAtMs, kept.heard);
    }
  };

  const finishHold = async (done: Hold): Promise<void> => {
    const { fate, from, to, speechEnds } = done.finish(cleanFrom);
    hold = undefined;
    const endedAtMs = atMs(speechEnds);
    const { goesOn: _, ...heard } = fate === "take" ? await recognise(from, to) : NOTHING;
    emit({ kind: "heard", heard, endedAtMs });
  };

  const stepFrame = async (): Promise<void> => {
    const frame = framesDone++;
    if (speaking) cleanFrom = framesDone * FRAME_SAMPLES + GATE_TAIL_SAMPLES;
    const gated = frame * FRAME_SAMPLES < cleanFrom;
    const { pcm, probability, near, bandPower } = await voice.judge(gated);
    if (mode === "open") await stepFrameOpen(frame, near, gated);
    else if (hold !== undefined) {
      hold.step(probability, speaking);
      if (hold.isOver(framesDone * FRAME_SAMPLES)) await finishHold(hold);
    }
    const inSpeech = mode === "open" ? open.announced : hold !== undefined;
    for (const event of meter.measure(pcm, bandPower, inSpeech))
      emit(event.kind === "level" ? { ...event, inSpeech } : event);
  };

  const stepBetween = async (): Promise<void> => {
    if (!speaking || mode !== "open" || open.announced) return;
    const near = await voice.judgeBetween();
    if (near >= BARGE_IN_ENDPOINT.startProbability) await stepFrameOpen(framesDone, near, true);
  };

  const stepHalf = async (): Promise<void> => {
    const from = halvesDone++ * HALF_FRAME_SAMPLES;
    sound.read(from, half);
    voice.take(half, from < cleanFrom && !open.announced);
    await (halvesDone % 2 === 0 ? stepFrame() : stepBetween());
  };

  return {
    push: (block, endsAtMs) =>
      inOrder(async () => {
        sound.append(block);
        anchorMs = endsAtMs;
        while ((halvesDone + 1) * HALF_FRAME_SAMPLES <= sound.end()) await stepHalf();
      }),
    setMode: (wanted) =>
      inOrder(() => {
        if (wanted === mode) return;
        if (kept !== undefined) endOpen(kept.endedAtMs, kept.heard);
        else if (open.announced || hold?.isReleased() === false) emit({ kind: "speechEnded", atMs: atMs(sound.end()) });
        mode = wanted;
        unfollowed = undefined;
        open = { ...OPEN_SILENCE, gated: open.gated };
        hold = undefined;
      }),
    hold: (down) =>
      inOrder(async () => {
        if (mode !== "held") return;
        if (down && hold !== undefined && !hold.isReleased()) return;
        if (down) {
          if (hold !== undefined) await finishHold(hold);
          hold = createHold(framesDone);
          emit({ kind: "speechStarted", atMs: atMs(sound.end()) });
        } else if (hold !== undefined && !hold.isReleased()) {
          hold.release(sound.end());
          emit({ kind: "speechEnded", atMs: atMs(sound.end()) });
        }
      }),
    setSpeaking: (wanted) => inOrder(() => void (speaking = wanted)),
    close() {
      closed = true;
      if (kept !== undefined) endOpen(kept.endedAtMs, kept.heard);
    },
    idle: () => steps,
  };
}
