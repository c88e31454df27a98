import { inQuietRoom } from "../sound.ts";
import { readDictionary, readGrammarSources } from "../../../src/cli/readGrammars.ts";
import { compileGrammar } from "../../../src/language/jsgf/compileGrammar.ts";
import { toWordGraph } from "../../../src/language/jsgf/wordGraph.ts";
import { parseDictionary } from "../../../src/listener/dictionary.ts";
import { frameSpeech } from "../../../src/listener/vadTrim.ts";
import { RATE_HZ, openLab, type Lab } from "../lab.ts";
import { atLevel } from "../mix.ts";
import { PHRASES, TALK } from "../phrases.ts";
import { createRandom } from "../random.ts";
import { machine, toMarkdown, writeReport, type Cell, type Table } from "../report.ts";
import { speedInChromium } from "./inChromium.ts";
import { memoryTable, watchWasmMemory } from "./memory.ts";
import { timeStages, type StageTimes } from "./stages.ts";
import { ms, quantile } from "../stopwatch.ts";
import { loadFlite, voicesOf } from "../synth.ts";

const ENTRIES = [
  ["numbers", "numbers", "number"],
  ["asked", "case", "asked"],
  ["open", "case", "open"],
] as const;
/** How large each grammar is to the search. */
function sizesText(): string {
  const dictionary = parseDictionary(readDictionary());
  if (!dictionary.ok) throw new Error(dictionary.error.message);
  const sizes = ENTRIES.map(([name, file, rule]) => {
    const grammar = compileGrammar(readGrammarSources(), { grammar: file, rule });
    if (!grammar.ok) throw new Error(grammar.error.message);
    const { states, arcs } = toWordGraph(grammar.value);
    const ways = arcs.reduce((sum, { word }) => sum + (dictionary.value.get(word)?.length ?? 0), 0);
    return `${name} ${states} states, ${ways} pronunciations`;
  });
  return `Grammars: ${sizes.join("; ")}.`;
}

const STATEMENTS = 60;
const OUTSIDE = 20;
const QUICK_SHARE = 0.1;

/** Statements of the language and talk outside it, by made voices in a quiet room, as the listener is given them. */
async function soundsOf(lab: Lab, texts: readonly string[], seed: number): Promise<readonly Float32Array[]> {
  const random = createRandom(seed * 1_000 + 31);
  const voices = voicesOf(await loadFlite());
  const sounds: Float32Array[] = [];
  for (const text of texts) {
    const whole = inQuietRoom(atLevel(random.pick(voices).say(text), -26), random);
    sounds.push(await frameSpeech(whole, lab.models.vad));
  }
  return sounds;
}

function stageRows(where: string, times: readonly StageTimes[]): readonly (readonly Cell[])[] {
  const soundMs = times.reduce((sum, t) => sum + t.soundMs, 0);
  const row = (stage: string, of: (t: StageTimes) => number): readonly Cell[] => {
    const spent = times.map(of);
    const total = spent.reduce((a, b) => a + b, 0);
    return [
      where,
      stage,
      spent.length,
      ms(quantile(spent, 0.5)),
      ms(quantile(spent, 0.95)),
      ms((1000 * total) / soundMs),
    ];
  };
  const names = Object.keys(times[0]?.searches ?? {});
  return [
    row("features", (t) => t.features),
    row("network", (t) => t.network),
    row("probabilities and free path", (t) => t.freePath),
    ...names.map((name) => row(`search, ${name}`, (t) => t.searches[name] ?? NaN)),
  ];
}

const STAGE_COLUMNS = ["where", "stage", "n", "median ms", "95th ms", "ms per second of sound"];

/** Features, network and search: how long each takes, in Node and in Chromium, and what memory `count` utterances leave. */
export async function runSpeed(options: {
  readonly quick: boolean;
  readonly count: number;
  readonly seed: number;
}): Promise<void> {
  const begunMs = performance.now();
  const wasmBytes = watchWasmMemory();
  const onMachine = machine();
  const lab = await openLab();
  const share = options.quick ? QUICK_SHARE : 1;
  const random = createRandom(options.seed * 1_000 + 30);
  const said = random.sample(
    PHRASES.filter(({ state }) => state === "open").map(({ words }) => words),
    Math.round(STATEMENTS * share),
  );
  const inside = await soundsOf(lab, said, options.seed);
  const outside = await soundsOf(lab, random.sample(TALK, Math.round(OUTSIDE * share)), options.seed);

  const tables: Table[] = [];
  const show = (table: Table): void => {
    tables.push(table);
    process.stdout.write(`${toMarkdown(table)}\n\n`);
  };
  const { acoustic } = lab.models;
  const { runs, webGpu } = await speedInChromium(inside, ENTRIES);
  show({
    title: "Speed of the listener's stages",
    notes: [
      `${inside.length} statements of the language, mean length ${meanS(inside)} s, built from source in both. ` +
        `WebGPU in this Chromium: ${webGpu}. Pages that share memory with threads: ${runs.every((r) => r.isolated) ? "yes" : "no"}.`,
      `The least of three times for each sound and stage. ${sizesText()}`,
    ],
    columns: STAGE_COLUMNS,
    rows: [
      ...stageRows("Node, 1 thread", await timeStages(inside, acoustic, lab.searches)),
      ...runs.flatMap(({ name, times }) => stageRows(name, times)),
    ],
  });
  show({
    title: "The same on talk outside the language, under Node",
    notes: [
      `${outside.length} sentences, mean length ${meanS(outside)} s: where nothing fits, more paths stay in the beam.`,
    ],
    columns: STAGE_COLUMNS,
    rows: stageRows("Node, 1 thread", await timeStages(outside, acoustic, lab.searches)),
  });
  const listener = lab.models.listenerFor(lab.searches.open);
  show(await memoryTable(listener, [...inside, ...outside], options.count, wasmBytes));
  const info = {
    date: new Date().toISOString(),
    machine: onMachine,
    options: `speed${options.quick ? ", quick" : ""}, seed ${options.seed}`,
    tookS: Math.round((performance.now() - begunMs) / 1000),
  };
  writeReport("speed", info, tables, {});
}

const meanS = (sounds: readonly Float32Array[]): string =>
  (sounds.reduce((sum, pcm) => sum + pcm.length, 0) / Math.max(1, sounds.length) / RATE_HZ).toFixed(1);
