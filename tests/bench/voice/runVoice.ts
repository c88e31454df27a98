import type { FliteVoice } from "../../../src/adapters/voice/synthesise.ts";
import { wordsToNumber } from "../../../src/language/numbers/wordsToNumber.ts";
import { sayNumber } from "../../../src/language/sentences/number.ts";
import { readNoises } from "../audioSet.ts";
import { ENGINES, halfOf } from "../hearing/conditions.ts";
import { openLab, RATE_HZ, type Lab } from "../lab.ts";
import { atLevel, loopFrom, mixAt, pad, speechPower } from "../mix.ts";
import type { BenchOptions } from "../options.ts";
import { createRandom, type Random } from "../random.ts";
import { machine, toMarkdown, writeReport, type Cell, type Table } from "../report.ts";
import { inQuietRoom } from "../sound.ts";
import { fliteSound, loadFlite } from "../synth.ts";
import { hearBySecondJudge, secondJudgeIsHere } from "./secondJudge.ts";
import { shapeInChromium } from "./shapeInChromium.ts";

const VOICES: readonly FliteVoice[] = ["rms", "slt", "awb"];
/** As the app speaks; `synthesise.ts`. */
const STRETCH = 0.75;
/** Teens and tens, which are mistaken most, and others up to the highest pressure that is at all common. */
const HARD = [13, 14, 15, 16, 17, 18, 19, 20, 30, 40, 50, 60, 70, 80, 90];
const OTHERS = Array.from({ length: 179 }, (_none, i) => i + 21).filter((n) => !HARD.includes(n));
const SNR_DB = [5, 0];
const AROUND_S = 0.5;
const SPEECH_DBFS = -26;
/** So many copies of speech on top of each other have its spectrum and nothing of its words. */
const COPIES = 300;

type Sounded = { readonly value: number; readonly pcm: Float32Array };
type Judge = (sounds: readonly Float32Array[]) => Promise<readonly (number | undefined)[]>;

const valueOf = (words: string): number | undefined => {
  const value = wordsToNumber(words.split(" "));
  return value.ok ? value.value : undefined;
};

const ownJudge =
  (lab: Lab): Judge =>
  async (sounds) => {
    const heard: (number | undefined)[] = [];
    for (const pcm of sounds) {
      const [best] = (await lab.hearHeld(pcm, "numbers")).candidates;
      heard.push(best && valueOf(best.words));
    }
    return heard;
  };
const secondJudge: Judge = async (sounds) => hearBySecondJudge(sounds).map(valueOf);

/** Noise with the long-term spectrum of this speech. */
function noiseLike(speech: readonly Float32Array[], random: Random): Float32Array {
  const joined = Float32Array.from(speech.flatMap((pcm) => [...pcm]));
  const noise = new Float32Array(joined.length);
  for (let copy = 0; copy < COPIES; copy++) {
    const from = random.below(joined.length);
    const sign = random.below(2) === 0 ? 1 : -1;
    for (let i = 0; i < noise.length; i++) noise[i]! += sign * joined[(i + from) % joined.length]!;
  }
  return noise;
}

/** The same stretch of the same noise under plain and shaped, and both equally strong while they speak. */
function mixed(sounds: readonly Sounded[], noises: readonly Float32Array[], snrDb: number, seed: number) {
  const random = createRandom(seed);
  return sounds.map(({ pcm }) => {
    const around = Math.round(AROUND_S * RATE_HZ);
    const padded = pad(atLevel(pcm, SPEECH_DBFS), around, around);
    const noise = random.pick(noises);
    return mixAt(padded, loopFrom(noise, random.below(noise.length), padded.length), snrDb);
  });
}

const db = (power: number): string => (10 * Math.log10(power)).toFixed(1);
const peakOf = (pcm: Float32Array): number => pcm.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
const mean = (values: readonly number[]): number => values.reduce((sum, x) => sum + x, 0) / values.length;

/** How well numbers said by the built-in voice come through noise, plain and as the app shapes them. */
export async function runVoice({ count, seed }: BenchOptions, progress: (text: string) => void): Promise<void> {
  const startedMs = performance.now();
  const random = createRandom(seed);
  const values = [...HARD, ...random.sample(OTHERS, Math.max(0, count - HARD.length))];
  const flite = await loadFlite();
  const lab = await openLab();
  const engines = halfOf("test", await readNoises())
    .filter(({ name }) => ENGINES.includes(name))
    .map(({ pcm }) => pcm);
  const judges: readonly (readonly [string, Judge])[] = [
    ["the app's listener", ownJudge(lab)],
    ...(secondJudgeIsHere() ? [["a general recogniser", secondJudge] as const] : []),
  ];
  const rows: Cell[][] = [];
  const levels: Cell[][] = [];
  for (const voice of VOICES) {
    const plain = values.map((value) => ({ value, pcm: fliteSound(flite, voice, STRETCH, sayNumber(value, 0)) }));
    const through = await shapeInChromium(plain.map(({ pcm }) => pcm));
    const shaped = plain.map(({ value }, i) => ({ value, pcm: through[i]! }));
    const ownNoise = noiseLike(
      plain.map(({ pcm }) => pcm),
      random,
    );
    for (const [shaping, sounds] of [
      ["plain", plain],
      ["shaped", shaped],
    ] as const) {
      const power = mean(sounds.map(({ pcm }) => speechPower(pcm)));
      levels.push([voice, shaping, db(power), mean(sounds.map(({ pcm }) => peakOf(pcm))).toFixed(2)]);
      const quiet = sounds.map(({ pcm }) => inQuietRoom(atLevel(pcm, SPEECH_DBFS), random));
      const conditions = [
        quiet,
        ...[engines, [ownNoise]].flatMap((noises) =>
          SNR_DB.map((snrDb) => (noises.length === 0 ? undefined : mixed(sounds, noises, snrDb, seed))),
        ),
      ];
      for (const [judgeName, judge] of judges) {
        progress(`${voice}, ${shaping}: ${judgeName}`);
        const cells: Cell[] = [];
        for (const condition of conditions) {
          const heard = condition && (await judge(condition));
          const right = heard?.filter((value, i) => value === sounds[i]!.value).length;
          cells.push(right === undefined ? "" : Math.round((100 * right) / sounds.length));
        }
        rows.push([judgeName, voice, shaping, sounds.length, ...cells]);
      }
    }
  }
  const tables: readonly Table[] = [
    {
      title: "Numbers right, %: the built-in voice, plain and as the app shapes it",
      notes: [
        `Said as sentences say them, ${values.length} numbers: teens, tens, others up to 199. Shaped by the app's own graph in headless Chromium.`,
        "Plain and shaped are equally strong while they speak (unweighted, full band), in the same noise. Engines: recordings; like speech: with the voice's own long-term spectrum.",
        "Neither judge had part in the equaliser's figures. The app's listener was trained on plain speech of these voices among others. No person was asked.",
      ],
      columns: [
        "judge",
        "voice",
        "",
        "n",
        "quiet",
        "engines 5 dB",
        "engines 0 dB",
        "like speech 5 dB",
        "like speech 0 dB",
      ],
      rows: rows.sort((a, b) => String(b[0]).localeCompare(String(a[0]))),
    },
    {
      title: "How loud it is",
      notes: [
        "As the device is handed it at the usual gain: power while speaking, and the largest sample, in the mean.",
      ],
      columns: ["voice", "", "dBFS", "peak"],
      rows: levels,
    },
  ];
  process.stdout.write(`${tables.map(toMarkdown).join("\n\n")}\n`);
  const tookS = Math.round((performance.now() - startedMs) / 1000);
  const info = {
    date: new Date().toISOString(),
    machine: machine(),
    options: `voice, n ${count}, seed ${seed}`,
    tookS,
  };
  writeReport("voice", info, tables, {});
}
