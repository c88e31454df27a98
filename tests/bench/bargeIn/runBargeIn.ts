import { resample } from "../../../src/listener/resample.ts";
import { hasAudioSet, readNoises } from "../audioSet.ts";
import { groupBy } from "../groupBy.ts";
import { halfOf } from "../hearing/conditions.ts";
import { openLab, RATE_HZ } from "../lab.ts";
import { atLevel, loopFrom, pad } from "../mix.ts";
import type { BenchOptions } from "../options.ts";
import { createRandom, type Random } from "../random.ts";
import { machine, toMarkdown, writeReport, type Cell, type Table } from "../report.ts";
import { quantile } from "../stopwatch.ts";
import { loadFlite } from "../synth.ts";
import { createVoicesTogether } from "../voicesTogether.ts";
import { cutsOver } from "./hearOver.ts";
import { bargeInTable } from "./inChromium.ts";
import { madeNoises } from "./madeNoise.ts";
import { HISS, talkersOf, talkOver, type TalkedOver } from "./talkers.ts";

const AT_ONCE = 16;
/** What begins sooner than the speech was no answer to it. */
const EARLY_SAMPLES = 320;
const NOISE_DBFS = [-50, -38, -26] as const;
const NOISE_S = 10;
/** A crowd must have been heard for a while to be known as one. */
const NOISE_BEFORE_S = 6.5;
const MADE_BEFORE_S = 0.5;
/** What an echo canceller leaves of our voice; the hiss of the microphone is at −65. */
const OWN_DBFS = [-26, -40, -50, -60, -66] as const;
/** Invented. The first is what our voice is known by when the second begins. */
const OWN_FIRST = "Heart rate ninety two, sats ninety six.";
const OWN = [
  "Pressure one ten over sixty. MAP seventy seven, thirteen under ninety.",
  "Example protocol, not approved for patients.",
  "Bleeding stopped, pelvis bound if suspected?",
  "Sats eighty eight, two under ninety. One minute old.",
  "Ketamine, one five zero milligrams. Fifteen, one five?",
  "Head up thirty degrees?",
];

type Sound = { readonly pcm: Float32Array; readonly ownFrom: number };

const hissed = (pcm: Float32Array, random: Random): Float32Array => pcm.map((x) => x + HISS * (2 * random.next() - 1));
const msOf = (samples: readonly number[], q: number): number => Math.round(quantile(samples, q) / 16);

function talkTable(trials: readonly (TalkedOver & { readonly cuts: readonly number[] })[]): Table {
  const rows = [...groupBy(trials, ({ who, condition }) => `${who}|${condition}`)].map(
    ([key, some]): readonly Cell[] => {
      const answered = some.map((t) => ({ ...t, cut: t.cuts.find((at) => at >= t.onset - EARLY_SAMPLES) }));
      // Whoever was taken to talk before he did is still being heard when he does.
      const early = answered.filter((t) => t.cut === undefined && t.cuts.length > 0).length;
      const cut = answered.flatMap((t) => (t.cut === undefined ? [] : [{ ...t, cut: t.cut }]));
      const fromAudible = key.includes("made voice") && !key.includes("soft") ? cut.map((t) => t.cut - t.audible) : [];
      const fromOnset = cut.map((t) => t.cut - t.onset);
      const both = [fromOnset, fromAudible].flatMap((times): readonly Cell[] =>
        times.length === 0 ? ["", ""] : [msOf(times, 0.5), msOf(times, 0.95)],
      );
      return [...key.split("|"), some.length, some.length - cut.length - early, early, ...both];
    },
  );
  return {
    title: "Barge-in, the detector alone: from the onset of speech to the cut, in time of the sound",
    notes: [
      "Speech at −26 dBFS (soft: −40) a second after our voice begins; the delay of microphone, worker and loudspeaker comes on top. Onset: the first 10 ms within 20 dB of the loudest, clicks left out. Of made voices also from the first sample over −40 dBFS.",
      "Not cut: not within 1.2 s. Before: our voice was cut by something before the onset, and the talk was taken for the rest of it.",
    ],
    columns: [
      "who",
      "condition",
      "n",
      "not cut",
      "before",
      "median ms",
      "95th ms",
      "median, −40 dBFS",
      "95th, −40 dBFS",
    ],
    rows,
  };
}

type Cuts = { readonly name: string; readonly seconds: number; readonly cuts: number };

function falseTable(title: string, notes: readonly string[], found: readonly Cuts[]): Table {
  const row = (name: string, some: readonly Cuts[]): readonly Cell[] => {
    const seconds = some.reduce((sum, t) => sum + t.seconds, 0);
    const cuts = some.reduce((sum, t) => sum + t.cuts, 0);
    return [name, Math.round(seconds), cuts, ((60 * cuts) / seconds).toFixed(2)];
  };
  const rows = [...groupBy(found, ({ name }) => name)].map(([name, some]) => row(name, some));
  return { title, notes, columns: ["sound", "seconds", "cuts", "a minute"], rows: [...rows, row("all", found)] };
}

/** How soon and how wrongly our voice is cut: the detector on the sounds of a set, then all of it in Chromium. */
export async function runBargeIn(options: BenchOptions, progress: (text: string) => void): Promise<void> {
  const { set, count, seed } = options;
  const startedMs = performance.now();
  const tables: Table[] = [];
  const show = (table: Table): void => {
    tables.push(table);
    process.stdout.write(`${toMarkdown(table)}\n\n`);
  };
  if (hasAudioSet()) for (const table of await detectorTables(options, progress)) show(table);
  progress("in Chromium");
  show(await bargeInTable());
  const tookS = Math.round((performance.now() - startedMs) / 1000);
  const info = {
    date: new Date().toISOString(),
    machine: machine(),
    options: `bargein, ${set}, n ${count}, seed ${seed}`,
    tookS,
  };
  writeReport("bargein", info, tables, {});
}

async function detectorTables(
  { set, count, seed }: BenchOptions,
  progress: (text: string) => void,
): Promise<readonly Table[]> {
  await openLab(); // sets the runtime up
  const newVoice = await createVoicesTogether();
  const random = createRandom(seed * 2 + (set === "test" ? 1 : 0));
  const recordings = halfOf(set, await readNoises());
  const cutAll = async <T extends Sound>(
    sounds: readonly T[],
  ): Promise<readonly (T & { cuts: readonly number[] })[]> => {
    const done: (T & { cuts: readonly number[] })[] = [];
    for (let i = 0; i < sounds.length; i += AT_ONCE) {
      const some = sounds.slice(i, i + AT_ONCE);
      done.push(
        ...(await Promise.all(some.map(async (s) => ({ ...s, cuts: await cutsOver(s.pcm, s.ownFrom, newVoice()) })))),
      );
      if (i % 160 === 0) progress(`${i} of ${sounds.length}`);
    }
    return done;
  };
  const counted = (some: readonly (Sound & { name: string; cuts: readonly number[] })[]): readonly Cuts[] =>
    some.map(({ name, pcm, ownFrom, cuts }) => ({
      name,
      seconds: (pcm.length - ownFrom) / RATE_HZ,
      cuts: cuts.length,
    }));

  const talkers = await talkersOf(set, count, random);
  progress("somebody talks over our voice");
  const talked = await cutAll(talkers.flatMap((talker) => talkOver(talker, recordings, random)));
  const noises = recordings.flatMap(({ name, pcm }) =>
    NOISE_DBFS.map((dbfs) => {
      const length = Math.max(pcm.length, NOISE_S * RATE_HZ) + NOISE_BEFORE_S * RATE_HZ;
      return { name, pcm: atLevel(loopFrom(pcm, 0, length), dbfs), ownFrom: NOISE_BEFORE_S * RATE_HZ };
    }),
  );
  const made = madeNoises(set, random).flatMap(({ name, pcm }) =>
    NOISE_DBFS.map((dbfs) => ({ name, pcm: hissed(atLevel(pcm, dbfs), random), ownFrom: MADE_BEFORE_S * RATE_HZ })),
  );
  const flite = await loadFlite();
  const say = (text: string): Float32Array => {
    const said = flite.synthesise(text);
    if (!said.ok) throw new Error(said.error.detail);
    return resample(said.value.pcm, said.value.sampleRate, RATE_HZ);
  };
  const first = pad(say(OWN_FIRST), RATE_HZ, RATE_HZ / 2);
  const own = OWN_DBFS.flatMap((dbfs) =>
    OWN.map((text) => {
      const both = Float32Array.from([...first, ...pad(say(text), 0, RATE_HZ / 4)]);
      return { name: `our voice at ${dbfs} dBFS`, pcm: hissed(atLevel(both, dbfs), random), ownFrom: RATE_HZ };
    }),
  );
  progress("noises and our own voice");
  const heldTo = "Our voice sounds all the time; once cut, it begins again when what cut it is over.";
  return [
    talkTable(talked),
    falseTable(
      "False cuts, recorded noise without talk to us",
      [
        `The ${set === "test" ? "second" : "first"} half of each recording at −50, −38 and −26 dBFS. ${heldTo} Crowds are talk.`,
      ],
      counted(await cutAll(noises)),
    ),
    falseTable(
      "False cuts, made noises",
      [`Made by formula, at the same levels. ${heldTo}`],
      counted(await cutAll(made)),
    ),
    falseTable(
      "False cuts, our own voice as an echo canceller leaves it",
      [`${OWN.length} sentences, each after another one, over a hiss of −65 dBFS.`],
      counted(await cutAll(own)),
    ),
  ];
}
