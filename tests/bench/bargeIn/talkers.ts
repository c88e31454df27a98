import { readRecording, readRows, type Noise } from "../audioSet.ts";
import { BABBLE, ENGINES } from "../hearing/conditions.ts";
import { pickSpeaker, type SetName } from "../hearing/speakers.ts";
import { RATE_HZ } from "../lab.ts";
import { atLevel, loopFrom, mixAt, pad } from "../mix.ts";
import type { Random } from "../random.ts";
import { loadFlite } from "../synth.ts";
import { firstAudible, speechOnset } from "./onset.ts";

const SPEECH_DBFS = -26;
const SOFT_DB = -14;
/** Of what is said so much is heard: whoever has not been noticed by then was not. */
const HEARD_S = 1.2;
export const HISS = 0.001;

/** Invented; begun by vowels, by voiced and by voiceless consonants. */
const LINES: Readonly<Record<SetName, readonly string[]>> = {
  tuning: [
    ...["stop", "heart rate ninety two", "correction", "blood pressure one ten over sixty", "say again", "disregard"],
    ...["sats ninety six", "map six five", "affirm", "one twenty over eighty", "negative", "heard", "five point four"],
  ],
  test: [
    ...["stand by", "heard", "pressure one thirty over seventy", "what is the map", "how old", "fifteen over", "next"],
    ...[
      "ketamine given",
      "temperature thirty seven",
      "four zero",
      "yes affirm",
      "head up thirty",
      "stop",
      "sats ninety",
    ],
  ],
};

export type Talker = { readonly who: "made voice" | "person"; readonly pcm: Float32Array };

/** Over our voice sounds: from `ownFrom` on; `audible` and `onset` are where somebody begins to talk, in samples. */
export type TalkedOver = {
  readonly who: Talker["who"];
  readonly condition: string;
  readonly pcm: Float32Array;
  readonly ownFrom: number;
  readonly audible: number;
  readonly onset: number;
};

/** `beforeS`: a crowd must have been heard for a while to be known as one. */
const CONDITIONS = [
  { name: "quiet", gainDb: 0, snrDb: undefined, noises: [], beforeS: 1 },
  { name: "quiet, soft voice", gainDb: SOFT_DB, snrDb: undefined, noises: [], beforeS: 1 },
  { name: "engines 10 dB", gainDb: 0, snrDb: 10, noises: ENGINES, beforeS: 1 },
  { name: "engines 5 dB", gainDb: 0, snrDb: 5, noises: ENGINES, beforeS: 1 },
  { name: "babble 10 dB", gainDb: 0, snrDb: 10, noises: BABBLE, beforeS: 6.5 },
] as const;

/** Made voices and people, as many of each; of people every second speaker is in each set. */
export async function talkersOf(set: SetName, count: number, random: Random): Promise<readonly Talker[]> {
  const flite = await loadFlite();
  const made = Array.from({ length: count }, (_, i): Talker => {
    const line = LINES[set][i % LINES[set].length]!;
    return { who: "made voice", pcm: pickSpeaker(set, random).say(flite, line, random) };
  });
  const rows = readRows("speech-manifest.csv").filter(({ kind = "" }) =>
    ["command", "command_number", "connected"].includes(kind),
  );
  const speakers = [...new Set(rows.map(({ speaker = "" }) => speaker))].sort();
  const ours = speakers.filter((_, i) => (i % 2 === 0) === (set === "tuning"));
  const people: Talker[] = [];
  for (const { file = "" } of random.sample(
    rows.filter(({ speaker = "" }) => ours.includes(speaker)),
    count,
  ))
    people.push({ who: "person", pcm: await readRecording(file) });
  return [...made, ...people];
}

/** Somebody begins a second after our voice, of which nothing is in the microphone. */
export function talkOver({ who, pcm }: Talker, recordings: readonly Noise[], random: Random): readonly TalkedOver[] {
  return CONDITIONS.map(({ name, gainDb, snrDb, noises, beforeS }) => {
    const said = atLevel(pcm, SPEECH_DBFS + gainDb);
    const begins = speechOnset(said);
    const lead = (beforeS + 1) * RATE_HZ + random.below(512);
    const padded = pad(said.subarray(0, begins + HEARD_S * RATE_HZ), lead, RATE_HZ / 10);
    const usable = recordings.filter((noise) => (noises as readonly string[]).includes(noise.name));
    const noise = usable.length === 0 ? undefined : random.pick(usable);
    const sound =
      noise === undefined || snrDb === undefined
        ? padded.map((x) => x + HISS * (2 * random.next() - 1))
        : mixAt(padded, loopFrom(noise.pcm, random.below(noise.pcm.length), padded.length), snrDb);
    return {
      who,
      condition: name,
      pcm: sound,
      ownFrom: beforeS * RATE_HZ,
      audible: lead + firstAudible(said),
      onset: lead + begins,
    };
  });
}
