import { loadContext } from "../../../src/cli/loadContext.ts";
import { judgeRun, mostWithin, unwatched, type Verdict } from "../../sim/judge.ts";
import type { Finding } from "../../sim/obligations.ts";
import { playSim, type SimRun } from "../../sim/playSim.ts";
import type { BenchOptions } from "../options.ts";
import { machine, toMarkdown, writeReport, type Table } from "../report.ts";
import { loadFlite } from "../synth.ts";
import { spokenLength } from "./spokenLength.ts";

const HOURS = 6;
const HOUR_MS = 3_600_000;
const TEN_MINUTES_MS = 600_000;

/** How much the tool is asked to say; nothing is said to have it all. */
const LEVELS = [
  { name: "full", line: undefined },
  { name: "brief", line: "talk brief" },
  { name: "alerts only", line: "alerts only" },
] as const;
type Level = (typeof LEVELS)[number];

type Played = {
  readonly seed: number;
  readonly run: SimRun;
  readonly verdict: Verdict;
  /** Of each hour; speech unasked and replies. */
  readonly spokenS: readonly number[];
  readonly spokenAlerts: readonly number[];
  readonly crossings: readonly number[];
};

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const mean = (values: readonly number[]): number => sum(values) / Math.max(1, values.length);

function byHour<T>(
  run: SimRun,
  items: readonly T[],
  atMs: (item: T) => number,
  weight: (item: T) => number,
): readonly number[] {
  const hours = Array.from({ length: HOURS }, () => 0);
  const startMs = run.turns[0]!.atMs;
  for (const item of items) hours[Math.min(HOURS - 1, Math.floor((atMs(item) - startMs) / HOUR_MS))]! += weight(item);
  return hours;
}

/** Whether this build took the level that it was asked for; a table must not call something brief that was not. */
const wasTaken = ({ line }: Level, { run }: Played): boolean =>
  line === undefined || run.turns.some(({ said, outcome }) => said === line && outcome !== "ignored");

function summaryTable(level: Level, played: readonly Played[]): readonly (string | number)[] {
  const total = (of: (verdict: Verdict) => readonly Finding[]): number =>
    sum(played.map(({ verdict }) => of(verdict).length));
  return [
    level.name,
    sum(played.map(({ verdict }) => verdict.crossings.length)),
    total((v) => v.missed),
    total((v) => v.late),
    total((v) => v.notTakenBack),
    total((v) => v.offScreen),
    Math.max(...played.map(({ verdict }) => mostWithin(verdict.spokenAtMs, TEN_MINUTES_MS).most)),
    mean(played.map(({ spokenAlerts }) => sum(spokenAlerts) / HOURS)).toFixed(1),
    mean(played.map(({ spokenS }) => sum(spokenS) / HOURS)).toFixed(0),
  ];
}

function conditionsTable(played: readonly Played[]): Table {
  const ids = [...new Set(played.flatMap(({ verdict }) => [...verdict.conditions.keys()]))];
  const of = (findings: (verdict: Verdict) => readonly Finding[], id: string): number =>
    sum(played.map(({ verdict }) => findings(verdict).filter(({ alertId }) => alertId === id).length));
  const count = (id: string, key: "crossings" | "announced" | "spoken" | "repeats"): number =>
    sum(played.map(({ verdict }) => verdict.conditions.get(id)?.[key] ?? 0));
  return {
    title: "Alerts by condition",
    notes: ["At full talk. A repeat is spoken without a new crossing since the last time that it was announced."],
    columns: ["alert", "crossings", "missed", "late", "announced", "of these spoken", "repeats"],
    rows: ids.map((id) => [
      id,
      count(id, "crossings"),
      of((v) => v.missed, id),
      of((v) => v.late, id),
      count(id, "announced"),
      count(id, "spoken"),
      count(id, "repeats"),
    ]),
  };
}

/**
 * What a simulated clinician of six hours hears: missed and late crossings, repeats, and how much is spoken, by hour, by
 * condition and by how much the tool is asked to say. `count`: cases a level.
 */
export async function runAlerts({ seed, count }: BenchOptions, progress: (text: string) => void): Promise<void> {
  const startedMs = performance.now();
  const context = await loadContext({});
  if (!context.ok) throw new Error(context.error);
  const secondsOf = spokenLength(await loadFlite());
  const { protocol } = context.value;
  const play = async (level: Level, nth: number): Promise<Played> => {
    const firstLines = level.line === undefined ? [] : [level.line];
    const run = await playSim(context.value, { seed: seed + nth, hours: HOURS, firstLines });
    const verdict = judgeRun(protocol, run);
    const texts = run.turns.flatMap(({ atMs, reply, announcements }) =>
      [reply, ...announcements.map(({ text }) => text)].map((text) => ({ atMs, text })),
    );
    const at = ({ atMs }: { readonly atMs: number }): number => atMs;
    return {
      seed: seed + nth,
      run,
      verdict,
      spokenS: byHour(run, texts, at, ({ text }) => secondsOf(text)),
      spokenAlerts: byHour(
        run,
        verdict.spokenAtMs,
        (atMs) => atMs,
        () => 1,
      ),
      crossings: byHour(run, verdict.crossings, at, () => 1),
    };
  };
  const levels: { readonly level: Level; readonly played: readonly Played[] }[] = [];
  for (const level of LEVELS) {
    const played: Played[] = [];
    for (let nth = 0; nth < count; nth++) {
      progress(`talk ${level.name}, case ${nth + 1} of ${count}`);
      const one = await play(level, nth);
      played.push(one);
      if (!wasTaken(level, one)) break;
    }
    levels.push({ level, played });
  }
  const taken = levels.filter(({ level, played }) => played.every((p) => wasTaken(level, p)));
  const not = levels.filter((l) => !taken.includes(l)).map(({ level }) => `"${level.line ?? ""}"`);
  const lacking = unwatched(protocol);
  const full = levels[0]!.played;
  const tables: readonly Table[] = [
    {
      title: "Alerts of a simulated clinician",
      notes: [
        `${count} invented cases of ${HOURS} hours a level (adults and a child), said as text, one second at a time. Judged on ` +
          "the facts against the numbers of the protocol, without its rules. Late: over 1 s after the value counted. Spoken: " +
          "alerts and prompts with words; seconds are of the built-in voice at its usual speed, replies included.",
        not.length === 0 ? "" : `This build does not understand ${not.join(" and ")}: no row for these.`,
        lacking.length === 0 ? "" : `This protocol has no alert for: ${lacking.join(", ")}.`,
      ].filter((note) => note !== ""),
      columns: [
        "talk",
        "crossings",
        "missed",
        "late",
        "not taken back",
        "not on screen",
        "most spoken in 10 min (budget 6)",
        "spoken alerts an hour",
        "spoken seconds an hour",
      ],
      rows: taken.map(({ level, played }) => summaryTable(level, played)),
    },
    {
      title: "Alerts by hour",
      notes: [`Means of ${count} cases.`],
      columns: [
        "hour",
        "crossings",
        "spoken alerts and prompts",
        ...taken.map(({ level }) => `spoken seconds, ${level.name}`),
      ],
      rows: Array.from({ length: HOURS }, (_, hour) => [
        hour + 1,
        mean(full.map((p) => p.crossings[hour]!)).toFixed(1),
        mean(full.map((p) => p.spokenAlerts[hour]!)).toFixed(1),
        ...taken.map(({ played }) => mean(played.map((p) => p.spokenS[hour]!)).toFixed(0)),
      ]),
    },
    conditionsTable(full),
  ];
  process.stdout.write(`${tables.map(toMarkdown).join("\n\n")}\n`);
  const tookS = Math.round((performance.now() - startedMs) / 1000);
  const info = { date: new Date().toISOString(), machine: machine(), options: `alerts, seed ${seed}`, tookS };
  const findings = levels.flatMap(({ level, played }) =>
    played.map((p) => {
      const { missed, late, notTakenBack, offScreen } = p.verdict;
      return { talk: level.name, seed: p.seed, missed, late, notTakenBack, offScreen };
    }),
  );
  writeReport("alerts", info, tables, { findings });
}
