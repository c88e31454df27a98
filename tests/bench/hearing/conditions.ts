import { resample } from "../../../src/listener/resample.ts";
import { atLevel, loopFrom, mixAt, pad, speechPower } from "../mix.ts";
import type { Noise } from "../audioSet.ts";
import { RATE_HZ } from "../lab.ts";
import type { Random } from "../random.ts";
import type { SetName } from "./speakers.ts";

export type Condition = {
  readonly name: string;
  /** Of the speech while speaking to the whole of the noise, unweighted, full band. */
  readonly snrDb: number;
  /** Classes of the noise list; none: a hiss. */
  readonly noises: readonly string[];
  /** Background before the speech, at least and at most. */
  readonly beforeS: readonly [number, number];
};

export const ENGINES: readonly string[] = ["helicopter", "engine", "aircraft", "machine"];
export const BABBLE: readonly string[] = ["crowd/babble"];
const BEFORE_S = [0.3, 0.8] as const;
/** The app has been in the room for longer than a crowd takes to be known as one. */
const CROWD_BEFORE_S = [6.5, 7] as const;
export const IN_ENGINES = { noises: ENGINES, beforeS: BEFORE_S } as const;
export const IN_BABBLE = { noises: BABBLE, beforeS: CROWD_BEFORE_S } as const;
export const CONDITIONS: readonly Condition[] = [
  { name: "quiet", snrDb: 40, noises: [], beforeS: BEFORE_S },
  { name: "engines 10 dB", snrDb: 10, ...IN_ENGINES },
  { name: "engines 5 dB", snrDb: 5, ...IN_ENGINES },
  { name: "babble 10 dB", snrDb: 10, ...IN_BABBLE },
];

/** The half of each recording that belongs to a set: the first in time is for tuning, the second for testing. */
export function halfOf(set: SetName, noises: readonly Noise[]): readonly Noise[] {
  return noises.map((noise) => {
    const middle = Math.floor(noise.pcm.length / 2);
    return { ...noise, pcm: set === "tuning" ? noise.pcm.subarray(0, middle) : noise.pcm.subarray(middle) };
  });
}

const SPEECH_DBFS = -26;
const QUIETER_DB = 18;
const LOUDER_DB = 6;
/** Open listening must hear the silence that ends an utterance, also where more could have followed. */
const AFTER_S: readonly [number, number] = [2.2, 2.7];

const seconds = ([low, high]: readonly [number, number], random: Random): number =>
  Math.round((low + (high - low) * random.next()) * RATE_HZ);
const hiss = (length: number, random: Random): Float32Array =>
  Float32Array.from({ length }, () => 2 * random.next() - 1);
/** A microphone has no more than full scale. */
const inRange = (x: number): number => Math.max(-1, Math.min(1, x));

export type Placed = { readonly pcm: Float32Array; readonly noise: string };

/**
 * Speech as a microphone would take it in: at a level between −44 and −20 dBFS, with the condition's background under it
 * and around it. A condition whose noises are missing throws: it must not be measured as another.
 */
export function place(
  speech: Float32Array,
  condition: Condition,
  recordings: readonly Noise[],
  random: Random,
): Placed {
  const levelDbfs = SPEECH_DBFS - QUIETER_DB + (QUIETER_DB + LOUDER_DB) * random.next();
  const padded = pad(speech, seconds(condition.beforeS, random), seconds(AFTER_S, random));
  const noise = condition.noises.length === 0 ? undefined : pickNoise(condition, recordings, random);
  const background = noise
    ? loopFrom(noise.pcm, random.below(noise.pcm.length), padded.length)
    : hiss(padded.length, random);
  const mixed = mixAt(padded, background, condition.snrDb);
  const gain = Math.sqrt(10 ** (levelDbfs / 10) / Math.max(1e-12, speechPower(padded)));
  return { pcm: mixed.map((x) => inRange(x * gain)), noise: noise ? noise.file : "hiss" };
}

/** A recording as it is, or with a condition's noise under it and under the room around it. */
export function placeRecording(
  pcm: Float32Array,
  condition: Condition | undefined,
  recordings: readonly Noise[],
  random: Random,
): { readonly pcm: Float32Array; readonly noise: string } {
  if (condition === undefined || condition.noises.length === 0) return { pcm, noise: "" };
  const noise = pickNoise(condition, recordings, random);
  const padded = pad(pcm, seconds(condition.beforeS, random), 0);
  const background = loopFrom(noise.pcm, random.below(noise.pcm.length), padded.length);
  return { pcm: mixAt(padded, background, condition.snrDb), noise: noise.file };
}

const ALONE_DBFS: readonly [number, number] = [-50, -20];
/** So that a short loop is not the same sound a thousand times. */
const PLAYED_RATIOS = [0.9, 0.95, 1, 1.05, 1.1] as const;

/** Noise alone of one of these classes, at a level between −50 and −20 dBFS, played a little slower or faster. */
export function noiseAlone(classes: readonly string[], seconds: number, recordings: readonly Noise[], random: Random) {
  const noise = pickNoise({ name: "noise alone", noises: classes }, recordings, random);
  const ratio = random.pick(PLAYED_RATIOS);
  const played = ratio === 1 ? noise.pcm : resample(noise.pcm, Math.round(RATE_HZ * ratio), RATE_HZ);
  const looped = loopFrom(played, random.below(played.length), seconds * RATE_HZ);
  const [low, high] = ALONE_DBFS;
  return { pcm: atLevel(looped, low + (high - low) * random.next()).map(inRange), noise: noise.file };
}

/** A class is picked first, so that one with many recordings does not stand for all. */
function pickNoise(
  { name, noises }: Pick<Condition, "name" | "noises">,
  recordings: readonly Noise[],
  random: Random,
): Noise {
  const usable = recordings.filter((n) => noises.includes(n.name));
  if (usable.length === 0) throw new Error(`no recording for "${name}"`);
  const picked = random.pick([...new Set(usable.map((n) => n.name))]);
  return random.pick(usable.filter((n) => n.name === picked));
}
