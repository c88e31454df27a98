import { CALL_LIMITS } from "../../../src/app/callWord.ts";
import { groupBy } from "../groupBy.ts";
import { readNoises } from "../audioSet.ts";
import { halfOf } from "../hearing/conditions.ts";
import { openLab } from "../lab.ts";
import type { BenchOptions } from "../options.ts";
import { machine, toMarkdown, writeReport, type Cell, type Table } from "../report.ts";
import { loadFlite } from "../synth.ts";
import { rateUpperPerHour, wilson } from "../wilson.ts";
import { isWoken, wakes, type CalledTrial } from "./calledTrial.ts";
import { hearCalls, hearUncalled } from "./hearCalled.ts";
import { hearLoud } from "./hearLoud.ts";
import { loudTables } from "./loudTables.ts";

const MARGINS = [0, 1, 3, 5, 8, 12];
const ALONE_M1S = [-1.2, -1, -0.8, -0.6, -0.4, -0.2];

const percent = (share: number): string => (100 * share).toFixed(1);

function share(count: number, n: number): string {
  const { low, high } = wilson(count, n);
  return `${count} of ${n}: ${percent(count / Math.max(1, n))} % (${percent(low)}–${percent(high)})`;
}

const rate = (count: number, hours: number): string =>
  `${(count / hours).toFixed(2)} (up to ${rateUpperPerHour(count, hours).toFixed(2)})`;

const hoursOf = (trials: readonly CalledTrial[]): number => trials.reduce((sum, t) => sum + t.soundS, 0) / 3600;
const countOf = (trials: readonly CalledTrial[], ...outcomes: readonly string[]): number =>
  trials.filter((t) => outcomes.includes(t.outcome)).length;

function missTable(calls: readonly CalledTrial[]): Table {
  const rows = [...groupBy(calls, (t) => `${t.condition}|${t.group}`)].map(([key, some]): readonly Cell[] => {
    const [condition = "", group = ""] = key.split("|");
    const missed = some.filter((t) => !isWoken(t)).length;
    const n = some.length;
    return [
      condition,
      group,
      share(missed, n),
      share(countOf(some, "right"), n),
      share(countOf(some, "askedRight"), n),
      share(countOf(some, "wrong"), n),
    ];
  });
  return {
    title: "Called: made voices that say the call word and a statement",
    notes: [
      "Missed: no utterance of it was taken to begin with the call word. The rest: what became of the statement.",
    ],
    columns: ["condition", "how", "missed", "right", "asked, right value offered", "wrong"],
    rows,
  };
}

function wakeTable(uncalled: readonly CalledTrial[]): Table {
  const all = [...groupBy(uncalled, (t) => t.group), ["all", uncalled] as const];
  return {
    title: "Called: false wakes, by sound without the call word",
    notes: [
      "Per hour with the upper end of the 95 % Poisson interval. Acted upon: something was recorded, asked or answered.",
    ],
    columns: ["sound", "n", "hours", "utterances", "false wakes", "per hour", "acted upon"],
    rows: all.map(([group, some]): readonly Cell[] => [
      group,
      some.length,
      hoursOf(some).toFixed(2),
      some.reduce((n, t) => n + t.utterances.length, 0),
      wakes(some),
      rate(wakes(some), hoursOf(some)),
      some.filter((t) => t.outcome !== "silent").length,
    ]),
  };
}

function limitsTable(calls: readonly CalledTrial[], uncalled: readonly CalledTrial[]): Table {
  const grid = [
    ...MARGINS.map((margin) => ({ ...CALL_LIMITS, margin })),
    ...ALONE_M1S.map((aloneM1) => ({ ...CALL_LIMITS, aloneM1 })),
  ];
  return {
    title: "Called: what other limits would cost",
    notes: [`In use: margin ${CALL_LIMITS.margin}, alone ${CALL_LIMITS.aloneM1}.`],
    columns: ["margin", "alone, m1", "missed, quiet", "missed, all noise", "false wakes per hour"],
    rows: grid.map((limits): readonly Cell[] => {
      const missedOf = (some: readonly CalledTrial[]) =>
        share(some.filter((t) => !isWoken(t, limits)).length, some.length);
      return [
        limits.margin,
        limits.aloneM1,
        missedOf(calls.filter((t) => t.condition === "quiet")),
        missedOf(calls.filter((t) => t.condition !== "quiet")),
        rate(wakes(uncalled, limits), hoursOf(uncalled)),
      ];
    }),
  };
}

function wokenBy(uncalled: readonly CalledTrial[]): Table {
  return {
    title: "Called: what woke it",
    notes: [],
    columns: ["sound", "condition", "said", "heard"],
    rows: uncalled
      .filter((t) => isWoken(t))
      .slice(0, 20)
      .map((t): readonly Cell[] => [
        t.group,
        t.condition,
        t.said,
        t.utterances.map((u) => u.candidates[0]?.words ?? "-").join(" | "),
      ]),
  };
}

const calledTables = (calls: readonly CalledTrial[], uncalled: readonly CalledTrial[]): readonly Table[] => [
  missTable(calls),
  wakeTable(uncalled),
  limitsTable(calls, uncalled),
  wokenBy(uncalled),
];

/** Measures called listening: misses, false wakes, and what other limits would cost. */
export async function runCalled({ count, seed, set, quick }: BenchOptions, progress: (text: string) => void) {
  const startedMs = performance.now();
  const lab = await openLab();
  const flite = await loadFlite();
  const noises = halfOf(set, await readNoises());
  const parts = { lab, flite, noises, set, seed, count, noiseHours: quick ? 0.1 : 1 };
  progress("called");
  const calls = await hearCalls(parts);
  progress("uncalled");
  const uncalled = await hearUncalled(parts);
  progress("loud");
  const loud = await hearLoud(parts);
  const tables = [...calledTables(calls, uncalled), ...loudTables(loud)];
  for (const table of tables) process.stdout.write(`${toMarkdown(table)}\n\n`);
  const tookS = Math.round((performance.now() - startedMs) / 1000);
  const options = `set ${set}, ${count} statements a condition, seed ${seed}`;
  writeReport("called", { date: new Date().toISOString(), machine: machine(), options, tookS }, tables, {});
}
