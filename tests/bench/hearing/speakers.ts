import type { Flite, FliteVoice } from "../../../src/adapters/voice/synthesise.ts";
import { resample } from "../../../src/listener/resample.ts";
import { RATE_HZ } from "../lab.ts";
import type { Random } from "../random.ts";
import { espeakIsHere, espeakSound, fliteSound } from "../synth.ts";

export type SetName = "tuning" | "test";
/** Whether the listener's training heard this voice. Source: the listener's card and the voice list of its recipe. */
export type Standing = "voice heard" | "engine heard, voice not";

export type Speaker = {
  readonly name: string;
  readonly standing: Standing;
  readonly sex: "f" | "m";
  readonly accent: string;
  /** @returns 16 kHz, one channel: each time at another speed and pitch. */
  say(flite: Flite, words: string, random: Random): Float32Array;
};

/** Higher and faster over 1; an even step, so that few filters of the resampler are designed. */
const PITCH_RATIOS = [0.92, 0.96, 1, 1.04, 1.08] as const;
const between = (low: number, high: number, random: Random): number => low + (high - low) * random.next();

function fliteSpeaker(voice: FliteVoice, about: Omit<Speaker, "name" | "say">): Speaker {
  return {
    name: `flite ${voice}`,
    ...about,
    say(flite, words, random) {
      const pitch = random.pick(PITCH_RATIOS);
      // The resampled voice is faster by as much as it is higher; the stretch is that of the sound in the end.
      const sound = fliteSound(flite, voice, between(0.75, 1.2, random) * pitch, words);
      return pitch === 1 ? sound : resample(sound, Math.round(RATE_HZ * pitch), RATE_HZ);
    },
  };
}

const AMERICAN = "North American";
const FLITE: Readonly<Record<SetName, readonly Speaker[]>> = {
  tuning: [
    fliteSpeaker("rms", { standing: "voice heard", sex: "m", accent: AMERICAN }),
    fliteSpeaker("slt", { standing: "voice heard", sex: "f", accent: AMERICAN }),
    fliteSpeaker("kal16", { standing: "voice heard", sex: "m", accent: AMERICAN }),
  ],
  test: [fliteSpeaker("awb", { standing: "engine heard, voice not", sex: "m", accent: "Scottish" })],
};

/** espeak-ng's languages; the first list is that of the training recipe. */
const HEARD_ACCENTS = [
  ["en-us", AMERICAN],
  ["en-us-nyc", AMERICAN],
  ["en-gb", "English"],
  ["en-gb-scotland", "Scottish"],
  ["en-gb-x-gbclan", "English"],
  ["en-gb-x-gbcwmd", "English"],
  ["en-029", "Caribbean"],
] as const;
const UNHEARD_ACCENT = ["en-gb-x-rp", "English"] as const;

type Variants = Readonly<Record<Speaker["sex"], readonly string[]>>;
/** In the training recipe. */
const HEARD: Variants = {
  f: ["f1", "f2", "f3", "f4", "f5", "Annie", "linda", "steph", "belinda", "aunty", "Alicia"],
  m: ["m1", "m2", "m3", "m4", "m6", "m7", "m8", "Andy", "Alex", "adam", "Michael", "Denis", "paul", "victor", "Lee"],
};
/** Not in the recipe. No whispers, robots or jokes. The sexes are those of the voice files, else by the pitch in them. */
const KEPT_FOR_TUNING: Variants = {
  f: ["steph3", "shelby"],
  m: ["Marco", "Mario", "Hugo", "Storm", "benjamin", "david", "edward", "john", "sandro", "norbert"],
};
const KEPT_FOR_TEST: Variants = {
  f: ["Andrea", "anika", "steph2", "grandma"],
  m: [
    ...["AnxiousAndy", "Diogo", "Henrique", "Jacky", "Mike", "Nguyen", "antonio", "boris", "caleb", "ed", "gustave"],
    ...["marcelo", "max", "michel", "miguel", "pablo", "pedro", "quincy", "rob", "robert", "travis", "grandpa"],
  ],
};

function espeakSpeaker(
  [language, accent]: readonly [string, string],
  variant: string,
  sex: Speaker["sex"],
  standing: Standing,
): Speaker {
  const name = `espeak-ng ${language}+${variant}`;
  return {
    name,
    standing,
    sex,
    accent,
    say: (_, words, random) =>
      espeakSound(
        `${language}+${variant}`,
        Math.round(between(125, 200, random)),
        Math.round(between(30, 70, random)),
        words,
      ),
  };
}

const FLITE_SHARE = 0.3;
const WOMEN_SHARE = 0.4;
/** Of espeak-ng: voices the listener was not trained on, in the set that fits the decision. */
const UNHEARD_SHARE = 0.4;
const UNHEARD_ACCENT_SHARE = 0.3;

function pickEspeak(set: SetName, random: Random): Speaker {
  const sex = random.next() < WOMEN_SHARE ? "f" : "m";
  const isHeard = set === "tuning" && random.next() >= UNHEARD_SHARE;
  const variants = isHeard ? HEARD : set === "tuning" ? KEPT_FOR_TUNING : KEPT_FOR_TEST;
  const standing = isHeard ? "voice heard" : "engine heard, voice not";
  const accent = set === "test" && random.next() < UNHEARD_ACCENT_SHARE ? UNHEARD_ACCENT : random.pick(HEARD_ACCENTS);
  return espeakSpeaker(accent, random.pick(variants[sex]), sex, standing);
}

/** No voice of the set `test` is in the set `tuning` or in the listener's training. Without espeak-ng: the packaged engine. */
export function pickSpeaker(set: SetName, random: Random): Speaker {
  const packaged = !HAS_ESPEAK || random.next() < FLITE_SHARE;
  return packaged ? random.pick(FLITE[set]) : pickEspeak(set, random);
}

const HAS_ESPEAK = espeakIsHere();
