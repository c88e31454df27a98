import { understand } from "../../src/language/understand/understand.ts";
import { normalise } from "../../src/language/normalise/normalise.ts";
import { readRecording, type Noise, type Row } from "./audioSet.ts";
import type { Truth } from "./judge.ts";
import { RATE_HZ, type Lab } from "./lab.ts";
import { atLevel, mixAt } from "./mix.ts";
import type { Random } from "./random.ts";
import { caseAfter, scoreHeard } from "./scoring.ts";
import { inQuietRoom, someNoise, withRoom } from "./sound.ts";
import { pickVoice } from "./spoken.ts";
import type { Voice } from "./synth.ts";
import type { Trial } from "./trial.ts";

const NOTHING_TRUE: Truth = { keys: new Set(), entries: new Set(), isAsked: false };
const SPEECH_DBFS = -26;
const NOISE_DBFS = -30;
const TALK_SNR_DB = 15;
const START_MS = 1_800_000_000_000;

/** Trials of sound in which nothing was said to the app, and how long it lasted. */
export type Unmeant = { readonly trials: readonly Trial[]; readonly hours: number };

/** Listens openly to sounds that are not meant for it; whatever follows from them is a fault. */
export async function tryUnmeant(
  lab: Lab,
  group: string,
  sounds: AsyncIterable<{ readonly words: string; readonly voice: string; readonly pcm: Float32Array }>,
): Promise<Unmeant> {
  const state = caseAfter(lab.context, ["next"], START_MS);
  const trials: Trial[] = [];
  let samples = 0;
  for await (const { words, voice, pcm } of sounds) {
    samples += pcm.length;
    // Each utterance meets the same case: a question that a fault has opened must not make room for the next.
    const heards = await lab.hearOpen(pcm, "open");
    for (const heard of heards.length > 0 ? heards : [undefined]) {
      const scored = scoreHeard(lab.context, state, NOTHING_TRUE, heard === undefined ? [] : [heard], START_MS);
      trials.push({
        group,
        condition: heard === undefined ? "no utterance found" : "utterance found",
        voice,
        words,
        heard: scored.heardWords,
        outcome: scored.outcome,
        askedByRule: false,
        replays: scored.replays,
      });
    }
  }
  return { trials, hours: samples / RATE_HZ / 3600 };
}

/** Sentences said by made voices: half quiet, half in noise. */
export async function* talk(
  sentences: readonly string[],
  voices: readonly Voice[],
  noises: readonly Noise[],
  random: Random,
) {
  for (const words of sentences) {
    const voice = pickVoice(voices, random);
    const quiet = inQuietRoom(atLevel(voice.say(words), SPEECH_DBFS), random);
    const noise = noises.length > 0 && random.next() < 0.5 ? random.pick(noises) : undefined;
    const pcm = noise === undefined ? quiet : mixAt(quiet, someNoise(noise.pcm, quiet.length, random), TALK_SNR_DB);
    yield { words, voice: voice.name, pcm };
  }
}

/** Is it outside what an open case understands? */
export const isOutside = (lab: Lab, words: string): boolean =>
  understand(lab.context.grammars.open, normalise(words)).kind === "none";

/** Recordings of people who say what the language of an open case does not hold. */
export async function* recordings(rows: readonly Row[], random: Random) {
  for (const { file = "", words = "", speaker = "" } of rows)
    yield { words, voice: speaker, pcm: withRoom(await readRecording(file), random) };
}

/** Noise alone, each recording for so long. */
export async function* noiseAlone(noises: readonly Noise[], seconds: number, random: Random) {
  for (const { name, pcm } of noises)
    yield { words: "", voice: name, pcm: atLevel(someNoise(pcm, seconds * RATE_HZ, random), NOISE_DBFS) };
}
