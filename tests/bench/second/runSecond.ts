import { openLab } from "../lab.ts";
import { groupBy } from "../groupBy.ts";
import { createRandom } from "../random.ts";
import { machine, toMarkdown, writeReport, type Table } from "../report.ts";
import { clips } from "./clips.ts";
import { AVERAGED, listenAgain, type Evidence } from "./listenAgain.ts";
import { COPIES } from "./copies.ts";
import { ALONE, fallAt, rulesOf, wrongAmong } from "./rules.ts";
import { loadTongues, sayings } from "./sayings.ts";
import { ms, quantile, Stopwatches } from "../stopwatch.ts";
import { loadFlite } from "../synth.ts";

const NAMES = [...COPIES.map(({ name }) => name), AVERAGED];
/** Of the clips that fit the language, this share is taken. */
const SHARES = [0.98, 0.95, 0.9] as const;
const RESAMPLES = 400;
/** What fits the language worse than this would be taken by no rule. */
const LEAST_M1 = -0.5;
const PEOPLE_SHARE = 0.13;

/**
 * What listening a second time to a changed copy adds to the first margins, on statements in which a slip matters: wrong
 * accepts at equal acceptance, and milliseconds. `count` made statements, and people's numbers beside them.
 */
export async function runSecond(
  { count, seed }: { readonly count: number; readonly seed: number },
  progress: (text: string) => void,
): Promise<void> {
  const begunMs = performance.now();
  const onMachine = machine();
  const lab = await openLab();
  const flite = await loadFlite();
  const tongues = loadTongues(lab);
  const watches = new Stopwatches();
  const evidence: Evidence[] = [];
  const said = sayings(tongues, count, createRandom(seed * 1_000 + 21));
  const people = Math.round(count * PEOPLE_SHARE);
  let heardClips = 0;
  for await (const { pcm, tongue, ...about } of clips(said, flite, people, createRandom(seed * 1_000 + 22))) {
    const meant = tongues[tongue].meaningOf(about.words);
    if (meant === undefined) throw new Error(`"${about.words}" has not one meaning`);
    const heard = await listenAgain(lab, pcm, tongues[tongue], meant, watches);
    if (heard !== undefined) evidence.push({ ...about, ...heard });
    if (++heardClips % 100 === 0) progress(`second opinion: ${heardClips} clips`);
  }
  const tables = [conditionTable(evidence), ruleTable(evidence, seed), costTable(watches)];
  for (const table of tables) process.stdout.write(`${toMarkdown(table)}\n\n`);
  const info = {
    date: new Date().toISOString(),
    machine: onMachine,
    options: `second, n ${count}, seed ${seed}`,
    tookS: Math.round((performance.now() - begunMs) / 1000),
  };
  writeReport("second", info, tables, { evidence });
}

const fitting = (evidence: readonly Evidence[]): readonly Evidence[] => evidence.filter(({ m1 }) => m1 >= LEAST_M1);

function conditionTable(evidence: readonly Evidence[]): Table {
  const groups = groupBy(evidence, ({ kind, condition }) => `${kind}|${condition}`);
  return {
    title: "Second opinion: the first listening alone",
    notes: ["Wrong among the share that is taken first, by the margin to another meaning."],
    columns: [
      "kind",
      "condition",
      "n",
      "fit the language",
      "best guess wrong",
      ...SHARES.map((s) => `wrong of ${100 * s} % taken`),
    ],
    rows: [...groups].map(([key, some]) => {
      const fit = fitting(some);
      const wrongs = SHARES.map((share) => wrongAmong(fit, ALONE, Math.round(share * fit.length)));
      return [...key.split("|"), some.length, fit.length, some.filter((e) => !e.isRight).length, ...wrongs];
    }),
  };
}

function ruleTable(evidence: readonly Evidence[], seed: number): Table {
  const fit = fitting(evidence);
  const rows = NAMES.flatMap((name) =>
    rulesOf(name).map(({ name: rule, certaintyOf }) => [
      name,
      rule,
      ...SHARES.flatMap((share) => {
        const { alone, withIt, low, high } = fallAt(fit, certaintyOf, share, createRandom(seed), RESAMPLES);
        return [`${alone} → ${withIt}`, `${low} to ${high}`];
      }),
    ]),
  );
  return {
    title: "Second opinion: wrong accepts, alone → with it, both taking the same number of clips",
    notes: [
      `${fit.length} clips of ${new Set(fit.map((e) => e.saying)).size} sayings that fit the language (m1 ≥ ${LEAST_M1}). ` +
        "The interval is of the fall, by bootstrap over sayings, 95 %: one that holds 0 shows nothing.",
    ],
    columns: ["copy", "used as", ...SHARES.flatMap((s) => [`${100 * s} % taken`, "fall"])],
    rows,
  };
}

function costTable(watches: Stopwatches): Table {
  const stages = [
    "network",
    "search",
    "search among readings, made",
    "search among readings",
    ...COPIES.map(({ name }) => `copy: ${name}`),
  ];
  return {
    title: "Second opinion: what a further listening costs",
    notes: ["A copy, the network and the search once more; no bytes to download, as the network is the same."],
    columns: ["stage", "n", "median ms", "95th ms"],
    rows: stages.map((stage) => {
      const spent = watches.of(stage);
      return [stage, spent.length, ms(quantile(spent, 0.5)), ms(quantile(spent, 0.95))];
    }),
  };
}
