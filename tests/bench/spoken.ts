import type { Noise } from "./audioSet.ts";
import { truthOf } from "./judge.ts";
import type { Lab } from "./lab.ts";
import { atLevel, mixAt } from "./mix.ts";
import type { Phrase } from "./phrases.ts";
import type { Random } from "./random.ts";
import { caseAfter, scoreHeard } from "./scoring.ts";
import { inQuietRoom, someNoise } from "./sound.ts";
import type { Voice } from "./synth.ts";
import type { Trial } from "./trial.ts";

const SPEECH_DBFS = -26;
const SNRS_DB = [20, 10, 5] as const;
/** How often a voice is taken that the listener never heard, as most voices at hand are ones that it did. */
const UNHEARD_SHARE = 0.4;
const START_MS = 1_800_000_000_000;
/** So old are the readings of an open case that no new value counts as a jump. A question is not that old. */
const LATER_MS = { open: 3_600_000, asked: 5_000 } as const;

export function pickVoice(voices: readonly Voice[], random: Random): Voice {
  const unheard = random.next() < UNHEARD_SHARE;
  return random.pick(voices.filter((voice) => voice.inTraining !== unheard));
}

/** Phrases said by made voices, quiet and in noise, through open listening and the whole of the app. */
export async function trySpoken(
  lab: Lab,
  phrases: readonly Phrase[],
  voices: readonly Voice[],
  noises: readonly Noise[],
  random: Random,
): Promise<readonly Trial[]> {
  const trials: Trial[] = [];
  for (const phrase of phrases) {
    const { context } = lab;
    const state = caseAfter(context, phrase.before, START_MS);
    const nowMs = START_MS + LATER_MS[phrase.state];
    const truth = truthOf(context, state, phrase.words, nowMs);
    if (truth.keys.size === 0) throw new Error(`"${phrase.words}" is not in the language`);
    for (const snrDb of [undefined, ...(noises.length > 0 ? SNRS_DB : [])]) {
      const voice = pickVoice(voices, random);
      const quiet = inQuietRoom(atLevel(voice.say(phrase.words), SPEECH_DBFS), random);
      const noise = snrDb === undefined ? undefined : random.pick(noises);
      const pcm =
        noise === undefined || snrDb === undefined
          ? quiet
          : mixAt(quiet, someNoise(noise.pcm, quiet.length, random), snrDb);
      const scored = scoreHeard(context, state, truth, await lab.hearOpen(pcm, phrase.state), nowMs);
      trials.push({
        group: phrase.family,
        condition: snrDb === undefined ? "quiet" : `${snrDb} dB`,
        voice: noise === undefined ? voice.name : `${voice.name} in ${noise.name}`,
        words: phrase.words,
        heard: scored.heardWords,
        outcome: scored.outcome,
        askedByRule: truth.isAsked,
        replays: scored.replays,
      });
    }
  }
  return trials;
}
