import type { SoundShape } from "../listener/soundShape.ts";
import { median } from "./median.ts";

/**
 * Speech over the room, in dB, under which it is too loud, and from which it is well again; and how long it must be so.
 * Source of the first: `npm run bench -- called`, 236 statements that were found as utterances, 20 to −5 dB, by this very
 * estimate: under 12 dB 24 % were taken right and 30 % lost, from there up 49 % and 8 %; the rest was asked back, none was
 * taken wrong. It lies near speech mixed 5 dB over babble, and 2.5 dB over engines. The others are this project's choice.
 */
export const TOO_LOUD_UNDER_DB = 12;
export const WELL_FROM_DB = TOO_LOUD_UNDER_DB + 3;
export const TOO_LOUD_AFTER_MS = 3_000;
export const WELL_AFTER_MS = 5_000;
/** The meter's floor needs so long to forget our own voice. */
export const OWN_VOICE_TAIL_MS = 2_000;
const REMEMBERED = 3;
/** Speech that hardly stands out of the noise is taken to be so far under the two together. */
const LEAST_RISE_DB = 0.5;

export type Loudness = {
  readonly tooLoud: boolean;
  /** Unix ms since which it has been otherwise than `tooLoud` says, without a break. */
  readonly otherwiseSinceMs: number | undefined;
  /** Levels of speech, dBFS, newest last: of utterances that were understood, and of those that had to be refused. */
  readonly understoodDb: readonly number[];
  readonly refusedDb: readonly number[];
  /** From a stored profile of the voice. */
  readonly enrolledDb: number | undefined;
  /** The noise floor when our own voice was not in it, dBFS; none before it was measured. */
  readonly roomDb: number | undefined;
  readonly ownVoice: boolean;
  /** Unix ms until which the meter may still hold our own voice. */
  readonly deafUntilMs: number;
};

export const QUIET_ROOM: Loudness = {
  tooLoud: false,
  otherwiseSinceMs: undefined,
  understoodDb: [],
  refusedDb: [],
  enrolledDb: undefined,
  roomDb: undefined,
  ownVoice: false,
  deafUntilMs: -Infinity,
};

export type LoudnessInput =
  /** The meter's noise floor, dBFS, speech band. */
  | { readonly kind: "level"; readonly noiseDb: number; readonly atMs: number }
  | { readonly kind: "spoke"; readonly shape: SoundShape; readonly understood: boolean }
  | { readonly kind: "enrolled"; readonly speechDb: number | undefined }
  | { readonly kind: "ownVoice"; readonly sounding: boolean; readonly atMs: number }
  /** Nobody listens, or another microphone does: what was known of the room is worth nothing. */
  | { readonly kind: "stopped" };

/** What has changed, to be said once. */
export type LoudnessEffect = "tooLoud" | "well" | undefined;

const power = (db: number): number => 10 ** (db / 10);

/** The level of the speech alone, from an utterance that holds the noise too. dBFS. */
export function speechAloneDb({ levelDb, noiseDb }: SoundShape): number {
  const with_ = Math.max(levelDb, noiseDb + LEAST_RISE_DB);
  return 10 * Math.log10(power(with_) - power(noiseDb));
}

/** How loud the user speaks: as last understood, else as enrolled, else as it was when nothing could be understood. */
export const speechLevelDb = ({ understoodDb, enrolledDb, refusedDb }: Loudness): number | undefined =>
  median(understoodDb) ?? enrolledDb ?? median(refusedDb);

const remember = (levels: readonly number[], db: number): readonly number[] => [...levels, db].slice(-REMEMBERED);

function judge(before: Loudness, noiseDb: number, atMs: number): readonly [Loudness, LoudnessEffect] {
  const isDeaf = before.ownVoice || atMs < before.deafUntilMs;
  const state = isDeaf ? before : { ...before, roomDb: noiseDb };
  const speechDb = speechLevelDb(state);
  if (isDeaf || speechDb === undefined) return [{ ...state, otherwiseSinceMs: undefined }, undefined];
  const snrDb = speechDb - noiseDb;
  const isOtherwise = state.tooLoud ? snrDb >= WELL_FROM_DB : snrDb < TOO_LOUD_UNDER_DB;
  if (!isOtherwise) return [{ ...state, otherwiseSinceMs: undefined }, undefined];
  const otherwiseSinceMs = state.otherwiseSinceMs ?? atMs;
  if (atMs - otherwiseSinceMs < (state.tooLoud ? WELL_AFTER_MS : TOO_LOUD_AFTER_MS))
    return [{ ...state, otherwiseSinceMs }, undefined];
  return [{ ...state, tooLoud: !state.tooLoud, otherwiseSinceMs: undefined }, state.tooLoud ? "well" : "tooLoud"];
}

/**
 * Is the room too loud to hear safely? The level of the user's speech over the floor of the meter, with a dwell and a
 * hysteresis of its own, so that it does not flap. Our own voice is no noise: nothing is judged while it sounds.
 *
 * Errors: none; with no speech heard yet and none enrolled it says nothing. Not for: sound pressure or the safety of ears.
 */
export function stepLoudness(state: Loudness, input: LoudnessInput): readonly [Loudness, LoudnessEffect] {
  switch (input.kind) {
    case "level":
      return judge(state, input.noiseDb, input.atMs);
    case "spoke": {
      const db = speechAloneDb(input.shape);
      return input.understood
        ? [{ ...state, understoodDb: remember(state.understoodDb, db), refusedDb: [] }, undefined]
        : [{ ...state, refusedDb: remember(state.refusedDb, db) }, undefined];
    }
    case "enrolled":
      return [{ ...state, enrolledDb: input.speechDb }, undefined];
    case "ownVoice":
      return [
        {
          ...state,
          ownVoice: input.sounding,
          deafUntilMs: input.sounding ? state.deafUntilMs : input.atMs + OWN_VOICE_TAIL_MS,
        },
        undefined,
      ];
    case "stopped":
      return [{ ...QUIET_ROOM, enrolledDb: state.enrolledDb }, undefined];
  }
}
