import type { Flite } from "../../../src/adapters/voice/synthesise.ts";
import { readGrammarSources } from "../../../src/cli/readGrammars.ts";
import { hasAudioSet, readRecording, readRows, type Noise } from "../audioSet.ts";
import { CONDITIONS, noiseAlone, place, type Condition } from "../hearing/conditions.ts";
import { pickSpeaker, type SetName } from "../hearing/speakers.ts";
import { createStateAfter, LATER_MS, makeStatements, OPEN_CASE, START_MS } from "../hearing/statements.ts";
import { isOutside, makeTalk, nearTheLanguage } from "../hearing/talkTexts.ts";
import { createGrammarWalk } from "../hearing/walkGrammar.ts";
import { NOTHING_TRUE, truthOf } from "../judge.ts";
import { RATE_HZ, type Lab } from "../lab.ts";
import { createRandom, type Random } from "../random.ts";
import { withRoom } from "../sound.ts";
import { playCalled, type CalledTrial } from "./calledTrial.ts";

export type CalledParts = {
  readonly lab: Lab;
  readonly flite: Flite;
  readonly noises: readonly Noise[];
  readonly set: SetName;
  readonly seed: number;
  /** Statements a condition. */
  readonly count: number;
  readonly noiseHours: number;
};

const NOW_MS = START_MS + LATER_MS.open;
/** Said alone in one of three: what is wanted follows after a pause, as a second utterance. */
const ALONE_SHARE = 1 / 3;
const PAUSE_S: readonly [number, number] = [1, 3];
const NOISE_PIECE_S = 60;
/** The voices spell by rule and miss the word: it is written as it sounds, for espeak-ng in its own phonemes. */
const written = (speaker: string): string => (speaker.startsWith("espeak") ? "[[tr'eIg@s]]" : "tray gus");

const joined = (first: Float32Array, pauseS: number, second: Float32Array): Float32Array => {
  const from = first.length + Math.round(pauseS * RATE_HZ);
  const out = new Float32Array(from + second.length);
  out.set(first);
  out.set(second, from);
  return out;
};

function sayCalled(parts: CalledParts, words: string, isAlone: boolean, random: Random): Float32Array {
  const speaker = pickSpeaker(parts.set, random);
  const name = written(speaker.name);
  if (!isAlone) return speaker.say(parts.flite, `${name} ${words}`, random);
  const pauseS = PAUSE_S[0] + (PAUSE_S[1] - PAUSE_S[0]) * random.next();
  return joined(speaker.say(parts.flite, name, random), pauseS, speaker.say(parts.flite, words, random));
}

export const statementsFor = ({ lab, count, seed }: CalledParts) =>
  makeStatements(
    lab.context,
    createGrammarWalk(readGrammarSources(), "case"),
    count,
    createRandom(seed * 1_000 + 1),
  ).filter(({ state }) => state === "open");

const usable = ({ noises }: CalledParts): readonly Condition[] =>
  CONDITIONS.filter((c) => c.noises.length === 0 || noises.length > 0);

/** Statements with the call word first, by made voices. */
export async function hearCalls(parts: CalledParts): Promise<readonly CalledTrial[]> {
  const { lab, noises, seed } = parts;
  const start = createStateAfter(lab.context)(OPEN_CASE);
  const random = createRandom(seed * 1_000 + 2);
  const trials: CalledTrial[] = [];
  for (const { words: said } of statementsFor(parts)) {
    const truth = truthOf(lab.context, start, said, NOW_MS);
    for (const condition of usable(parts)) {
      const isAlone = random.next() < ALONE_SHARE;
      const { pcm } = place(sayCalled(parts, said, isAlone, random), condition, noises, random);
      const played = playCalled(lab.context, start, truth, await lab.hearAll(pcm, "called"), NOW_MS);
      const group = isAlone ? "call word, pause, statement" : "in one breath";
      trials.push({ group, condition: condition.name, said, soundS: pcm.length / RATE_HZ, ...played });
    }
  }
  return trials;
}

/** Everything that is not called: the same statements without the call word, talk, people, and noise. */
export async function hearUncalled(parts: CalledParts): Promise<readonly CalledTrial[]> {
  const { lab, flite, noises, set, seed, count, noiseHours } = parts;
  const start = createStateAfter(lab.context)(OPEN_CASE);
  const random = createRandom(seed * 1_000 + 3);
  const trials: CalledTrial[] = [];
  const hear = async (group: string, condition: string, said: string, pcm: Float32Array): Promise<void> => {
    const played = playCalled(lab.context, start, NOTHING_TRUE, await lab.hearAll(pcm, "called"), NOW_MS);
    trials.push({ group, condition, said, soundS: pcm.length / RATE_HZ, ...played });
  };
  const outside = (words: string): boolean => isOutside(lab, words);
  const texts: readonly (readonly [group: string, texts: readonly string[]])[] = [
    ["statements without the call word", statementsFor(parts).map(({ words }) => words)],
    ["talk", makeTalk(count, outside, random)],
    ["near the language", nearTheLanguage(outside)],
  ];
  for (const [group, all] of texts)
    for (const said of all) {
      const condition = random.pick(usable(parts));
      const sound = pickSpeaker(set, random).say(flite, said, random);
      await hear(group, condition.name, said, place(sound, condition, noises, random).pcm);
    }
  if (!hasAudioSet()) return trials;
  for (const row of random.sample(readRows("speech-manifest.csv"), 8 * count)) {
    if (row["kind"] === "room") continue;
    await hear("people", "as recorded", row["words"] ?? "", withRoom(await readRecording(row["file"] ?? ""), random));
  }
  const classes = [...new Set(noises.map(({ name }) => name))];
  const pieces = Math.ceil((noiseHours * 3600) / NOISE_PIECE_S);
  for (let i = 0; i < pieces; i++) {
    const name = classes[i % classes.length]!;
    await hear("noise", name, "", noiseAlone([name], NOISE_PIECE_S, noises, random).pcm);
  }
  return trials;
}
