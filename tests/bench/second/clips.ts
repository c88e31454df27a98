import type { Flite } from "../../../src/adapters/voice/synthesise.ts";
import { hasAudioSet, readNoises, readRecording, readRows, type Noise } from "../audioSet.ts";
import { CONDITIONS } from "../hearing/conditions.ts";
import { pickSpeaker } from "../hearing/speakers.ts";
import { RATE_HZ } from "../lab.ts";
import { atLevel, mixAt } from "../mix.ts";
import { saidNumber } from "../people.ts";
import type { Random } from "../random.ts";
import type { Saying, TongueName } from "./sayings.ts";
import { inQuietRoom, someNoise, withRoom } from "../sound.ts";

const SPEECH_DBFS = -26;
/** Of the room around a clip, 0.5 s before and 1.2 s after, the listener is given 0.3 s on each side. */
const framed = (pcm: Float32Array): Float32Array => pcm.slice(0.2 * RATE_HZ, pcm.length - 0.9 * RATE_HZ);
export type Clip = {
  readonly saying: string;
  readonly kind: string;
  readonly condition: string;
  readonly voice: string;
  readonly words: string;
  readonly tongue: TongueName;
  readonly pcm: Float32Array;
};

function* inConditions(
  about: Omit<Clip, "condition" | "pcm">,
  quiet: Float32Array,
  noises: readonly Noise[],
  nth: number,
  random: Random,
): Generator<Clip> {
  const some = CONDITIONS.filter((_, i) => (i + nth) % 2 === 0);
  for (const { name, snrDb, noises: wanted } of some) {
    const fitting = noises.filter((noise) => wanted.includes(noise.name));
    if (wanted.length === 0) yield { ...about, condition: name, pcm: quiet };
    else if (fitting.length > 0)
      yield {
        ...about,
        condition: name,
        pcm: mixAt(quiet, someNoise(random.pick(fitting).pcm, quiet.length, random), snrDb),
      };
  }
}

/** Every saying by one voice that neither training nor tuning heard, and so many of people's numbers, each in two of the conditions in turn. Without recordings: quiet alone. */
export async function* clips(
  all: readonly Saying[],
  flite: Flite,
  peopleCount: number,
  random: Random,
): AsyncGenerator<Clip> {
  const noises = await readNoises();
  for (const [n, saying] of all.entries()) {
    const speaker = pickSpeaker("test", random);
    const quiet = framed(inQuietRoom(atLevel(speaker.say(flite, saying.words, random), SPEECH_DBFS), random));
    yield* inConditions({ ...saying, saying: `${n}`, voice: speaker.name }, quiet, noises, n, random);
  }
  if (!hasAudioSet()) return;
  const rows = readRows("speech-manifest.csv").filter(
    (row) => row["kind"] === "connected" && saidNumber(row) !== undefined,
  );
  for (const [n, { file = "", words = "", speaker = "" }] of random.sample(rows, peopleCount).entries()) {
    const quiet = framed(withRoom(atLevel(await readRecording(file), SPEECH_DBFS), random));
    const about = { saying: file, kind: "people's numbers", voice: speaker, words, tongue: "numbers" } as const;
    yield* inConditions(about, quiet, noises, n, random);
  }
}
