import { hasAudioSet, readRows, type Noise } from "./audioSet.ts";
import { groupBy } from "./accuracyTable.ts";
import { isOutside, noiseAlone, recordings, talk, tryUnmeant, type Unmeant } from "./falseAccepts.ts";
import type { Lab } from "./lab.ts";
import { saidNumber, tryAnswers, tryNumbers } from "./people.ts";
import { NEAR_THE_LANGUAGE, PHRASES, TALK, type Phrase } from "./phrases.ts";
import { createRandom, type Random } from "./random.ts";
import { trySpoken } from "./spoken.ts";
import type { Voice } from "./synth.ts";
import type { Trial } from "./trial.ts";

/** How many of each kind of sound. */
export type Counts = {
  readonly phrases: number;
  readonly people: number;
  readonly outside: number;
  readonly talk: number;
  /** How often each sentence of talk is said, each time in a voice chosen anew. */
  readonly talkVoices: number;
  readonly noiseS: number;
  readonly latency: number;
};

export const FULL: Counts = {
  phrases: Infinity,
  people: Infinity,
  outside: Infinity,
  talk: Infinity,
  talkVoices: 3,
  noiseS: 120,
  latency: 60,
};
export const QUICK: Counts = {
  phrases: 24,
  people: 25,
  outside: 40,
  talk: 15,
  talkVoices: 1,
  noiseS: 12,
  latency: 12,
};

export type Parts = {
  readonly lab: Lab;
  readonly voices: readonly Voice[];
  readonly noises: readonly Noise[];
  readonly counts: Counts;
  readonly seed: number;
};

/** Each part has its own chance, so that a change in one does not move the others. */
const chanceOf = (seed: number, part: number): Random => createRandom(seed * 1_000 + part);

export const latencyPhrases = ({ counts, seed }: Parts): readonly Phrase[] =>
  chanceOf(seed, 1).sample(PHRASES, counts.latency);
export const latencyChance = ({ seed }: Parts): Random => chanceOf(seed, 2);

export const hearMadeVoices = ({ lab, voices, noises, counts, seed }: Parts): Promise<readonly Trial[]> =>
  trySpoken(lab, chanceOf(seed, 3).sample(PHRASES, counts.phrases), voices, noises, chanceOf(seed, 4));

/** Real people; needs the folder of recordings. */
export async function hearPeople({ lab, counts, seed }: Parts): Promise<{
  readonly numbers: readonly Trial[];
  readonly answers: readonly Trial[];
}> {
  const rows = readRows("speech-manifest.csv");
  const random = chanceOf(seed, 5);
  const numbersOf = (kind: string) => rows.filter((row) => row["kind"] === kind && saidNumber(row) !== undefined);
  const joined = readRows("joined.csv").filter((row) => saidNumber(row) !== undefined);
  const numbers = [
    ...(await tryNumbers(lab, "connected numbers", random.sample(numbersOf("connected"), counts.people))),
    ...(await tryNumbers(lab, "single number words", random.sample(numbersOf("word"), counts.people))),
    ...(await tryNumbers(lab, "joined digits", random.sample(joined, counts.people))),
  ];
  const verdicts = rows.filter((row) => row["words"] === "yes" || row["words"] === "no");
  const answers = await tryAnswers(lab, random.sample(verdicts, counts.people), chanceOf(seed, 6));
  return { numbers, answers };
}

/** Everything that is not meant for the app: people, made voices and noise, by name. */
export async function hearUnmeant({
  lab,
  voices,
  noises,
  counts,
  seed,
}: Parts): Promise<readonly (readonly [name: string, unmeant: Unmeant])[]> {
  const groups: (readonly [string, Unmeant])[] = [];
  if (hasAudioSet()) {
    const outside = readRows("speech-manifest.csv").filter(
      (row) => row["kind"] !== "room" && isOutside(lab, row["words"] ?? ""),
    );
    const some = chanceOf(seed, 7).sample(outside, counts.outside);
    for (const [kind, rows] of groupBy(some, (row) => row["kind"] ?? ""))
      groups.push([`people: ${kind}`, await tryUnmeant(lab, kind, recordings(rows, chanceOf(seed, 8)))]);
  }
  const made = [
    ["made voices: near the language", NEAR_THE_LANGUAGE],
    ["made voices: talk", TALK],
  ] as const;
  for (const [name, all] of made) {
    for (const said of all) if (!isOutside(lab, said)) throw new Error(`"${said}" is in the language`);
    const some = chanceOf(seed, 9).sample(all, counts.talk);
    const said = Array.from({ length: counts.talkVoices }, () => some).flat();
    groups.push([name, await tryUnmeant(lab, name, talk(said, voices, noises, chanceOf(seed, 10)))]);
  }
  if (noises.length > 0) {
    const sounds = noiseAlone(noises, counts.noiseS, chanceOf(seed, 11));
    groups.push(["noise alone", await tryUnmeant(lab, "noise", sounds)]);
  }
  return groups;
}
