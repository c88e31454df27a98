import type { VoiceProfile } from "../listener/voiceProfile.ts";
import { isAttentive, stepCalled, UNCALLED, type CalledInput, type CalledState } from "./calledMode.ts";
import { callOf } from "./callWord.ts";
import { QUIET_ROOM, stepLoudness, type Loudness, type LoudnessInput } from "./loudness.ts";
import type { ListeningMode, Utterance } from "./ports.ts";
import type { Outcome } from "./screenView.ts";
import { speechStartedAtMs } from "./speechStart.ts";

/** A hold begun by a key that gives no sign of its release ends by itself: the listener takes no more than 20 s. */
export const PRESS_LASTS_MS = 18_000;

/** How we listen now. */
export type Ears = {
  readonly mode: ListeningMode;
  readonly called: CalledState;
  readonly loudness: Loudness;
  /** What "hear me" found of the voice that is stored. */
  readonly isHeardBadly: boolean;
  /** Held listening is taking an utterance. */
  readonly holding: boolean;
  /** Unix ms of the press that began the hold, where it was a key without a release. */
  readonly pressedAtMs: number | undefined;
  /** Our voice is about to ask for the same words again: saying them is an answer. */
  readonly sayAgain: boolean;
};

export const FIRST_EARS: Ears = {
  mode: "open",
  called: UNCALLED,
  loudness: QUIET_ROOM,
  isHeardBadly: false,
  holding: false,
  pressedAtMs: undefined,
  sayAgain: false,
};

export type EarsInput =
  | { readonly kind: "mode"; readonly mode: ListeningMode }
  | { readonly kind: "hold"; readonly down: boolean }
  /** A key that gives no sign of its release: once to begin, once to end. */
  | { readonly kind: "press"; readonly atMs: number }
  | { readonly kind: "heard"; readonly utterance: Utterance }
  /** What came of an utterance, spoken or typed, and whether a question now waits. */
  | {
      readonly kind: "answered";
      readonly utterance: Utterance;
      readonly outcome: Outcome;
      readonly waits: boolean;
      readonly atMs: number;
    }
  | { readonly kind: "ownVoice"; readonly sounding: boolean; readonly waits: boolean; readonly atMs: number }
  | { readonly kind: "tick"; readonly atMs: number }
  /** The profile of "hear me", or none any more. */
  | { readonly kind: "enrolled"; readonly profile: VoiceProfile | undefined }
  | Extract<LoudnessInput, { readonly kind: "level" | "stopped" }>;

export type EarsEffect =
  /** It counts. */
  | { readonly kind: "take"; readonly utterance: Utterance }
  /** The call word alone: the next words count. */
  | { readonly kind: "attend" }
  | { readonly kind: "hold"; readonly down: boolean }
  | { readonly kind: "loudness"; readonly tooLoud: boolean };

type Step = readonly [Ears, readonly EarsEffect[]];

function loud(ears: Ears, input: LoudnessInput): Step {
  const [loudness, effect] = stepLoudness(ears.loudness, input);
  return [{ ...ears, loudness }, effect === undefined ? [] : [{ kind: "loudness", tooLoud: effect === "tooLoud" }]];
}

const call = (ears: Ears, input: CalledInput): Ears => ({ ...ears, called: stepCalled(ears.called, input)[0] });

function setHold(ears: Ears, down: boolean, pressedAtMs?: number): Step {
  if (ears.mode !== "held" || down === ears.holding) return [ears, []];
  return [{ ...ears, holding: down, pressedAtMs }, [{ kind: "hold", down }]];
}

function hear(ears: Ears, heard: Utterance): Step {
  const take = (utterance: Utterance): EarsEffect => ({
    kind: "take",
    utterance: ears.loudness.tooLoud || ears.isHeardBadly ? { ...utterance, doubtful: true } : utterance,
  });
  if (ears.mode !== "called") return [ears, [take(heard)]];
  const { endedAtMs } = heard;
  const startedAtMs = speechStartedAtMs(heard);
  const found = callOf(heard);
  const [called, effect] = stepCalled(ears.called, { kind: "heard", call: found.kind, startedAtMs, endedAtMs });
  const next = { ...ears, called };
  if (effect === "attend") return [next, [{ kind: "attend" }]];
  return [next, effect === "take" && found.kind !== "alone" ? [take(found.utterance)] : []];
}

/**
 * What is to be done with what is heard, pressed and measured: nothing, or one of the effects. Joins the listening modes
 * with the state "too loud". Pure; time comes in. Not for: meaning, which is the case's.
 */
export function stepEars(ears: Ears, input: EarsInput): Step {
  switch (input.kind) {
    case "mode":
      return [
        { ...ears, mode: input.mode, called: UNCALLED, holding: false, pressedAtMs: undefined, sayAgain: false },
        [],
      ];
    case "hold":
      return setHold(ears, input.down);
    case "press":
      return setHold(ears, !ears.holding, ears.holding ? undefined : input.atMs);
    case "tick":
      return ears.pressedAtMs !== undefined && input.atMs - ears.pressedAtMs >= PRESS_LASTS_MS
        ? setHold(ears, false)
        : [ears, []];
    case "heard":
      return hear(ears, input.utterance);
    case "answered": {
      const { utterance, outcome, atMs } = input;
      if (outcome === "ignored") return [ears, []];
      const sayAgain = outcome === "refused";
      const waits = input.waits || sayAgain;
      const after = call(call({ ...ears, sayAgain }, { kind: "understood" }), { kind: "waiting", waits, atMs });
      const { shape } = utterance;
      return shape === undefined ? [after, []] : loud(after, { kind: "spoke", shape, understood: !sayAgain });
    }
    case "ownVoice": {
      const { sounding, atMs } = input;
      const waits = input.waits || ears.sayAgain;
      const after = call({ ...ears, sayAgain: ears.sayAgain && sounding }, { kind: "voice", sounding, waits, atMs });
      return loud(after, { kind: "ownVoice", sounding, atMs });
    }
    case "enrolled": {
      const { profile } = input;
      const isHeardBadly = profile?.verdict === "badly";
      return loud({ ...ears, isHeardBadly }, { kind: "enrolled", speechDb: profile?.speechDb });
    }
    case "level":
    case "stopped":
      return loud(ears, input);
  }
}

/** Whether words count now without the call word. */
export const isListeningFor = ({ mode, called }: Ears, atMs: number): boolean =>
  mode !== "called" || isAttentive(called, atMs);
