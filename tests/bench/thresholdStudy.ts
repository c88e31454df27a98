import { THRESHOLDS, type Thresholds } from "../../src/listener/thresholds.ts";
import { OUTCOMES, worstOf, type Outcome } from "./judge.ts";
import { outcomeAt } from "./replay.ts";
import type { Cell, Table } from "./report.ts";
import type { Trial } from "./trial.ts";

/** Where each threshold is moved to. */
const MOVES: Readonly<Record<keyof Thresholds, readonly number[]>> = {
  m1Take: [-0.12, -0.206, -0.3, -0.4, -0.5],
  m2Take: [1.5, 2.59, 4, 5, 6],
  m1Loose: [-0.206, -0.4, -0.5, -0.6],
  m2Loose: [6, 8, 10, 12],
  m1Ask: [-0.5, -0.6, -0.8, -1],
  m2Ask: [0, 0.2, 0.4, 1],
};
const NAMES = Object.keys(MOVES) as readonly (keyof Thresholds)[];

export type StudySet = {
  readonly name: string;
  readonly trials: readonly Trial[];
  /** Set for sound that was not meant for the app: counts become rates. */
  readonly hours?: number;
};

const atThresholds = (trial: Trial, thresholds: Thresholds): Outcome =>
  worstOf(trial.replays.map((replay) => outcomeAt(replay, thresholds)));

function countAt(trials: readonly Trial[], thresholds: Thresholds): Readonly<Record<Outcome, number>> {
  const counts = Object.fromEntries(OUTCOMES.map((o) => [o, 0])) as Record<Outcome, number>;
  for (const trial of trials) counts[atThresholds(trial, thresholds)]++;
  return counts;
}

function cellsOf({ trials, hours }: StudySet, thresholds: Thresholds): readonly Cell[] {
  const counts = countAt(trials, thresholds);
  const asked = counts.askedRight + counts.askedWrong;
  if (hours !== undefined) return [counts.wrong, asked + counts.refused];
  return [((100 * counts.right) / trials.length).toFixed(1), asked, counts.wrong];
}

const columnsOf = ({ name, trials, hours }: StudySet): readonly string[] =>
  hours === undefined
    ? [`${name} (n ${trials.length}) right %`, "asked", "WRONG"]
    : [`${name} (${hours.toFixed(2)} h) ACCEPTED`, "asked or say again"];

function sweep(title: string, sets: readonly StudySet[], settings: readonly Thresholds[]): Table {
  const isNow = (t: Thresholds): boolean => NAMES.every((name) => t[name] === THRESHOLDS[name]);
  return {
    title,
    notes: [
      "Counts, except where per cent is said. The sound was heard once; the rules of the app were played again at each setting.",
    ],
    columns: [...NAMES, "", ...sets.flatMap(columnsOf)],
    rows: settings.map((t) => [
      ...NAMES.map((name) => t[name]),
      isNow(t) ? "now" : "",
      ...sets.flatMap((set) => cellsOf(set, t)),
    ]),
  };
}

const sensible = (t: Thresholds): boolean =>
  t.m1Ask <= t.m1Loose && t.m1Loose <= t.m1Take && t.m2Ask <= t.m2Take && t.m2Take <= t.m2Loose;

const moved = (change: Partial<Thresholds>): Thresholds => ({ ...THRESHOLDS, ...change });

/** Each threshold moved by itself from where it is now, then those that take together. */
export function thresholdTables(sets: readonly StudySet[]): readonly Table[] {
  const grid = MOVES.m2Take.flatMap((m2Take) =>
    MOVES.m1Loose.flatMap((m1Loose) => MOVES.m2Loose.map((m2Loose) => moved({ m2Take, m1Loose, m2Loose }))),
  );
  return [
    ...NAMES.map((name) =>
      sweep(`Thresholds: ${name} alone`, sets, MOVES[name].map((value) => moved({ [name]: value })).filter(sensible)),
    ),
    sweep("Thresholds: m2Take and the loose pair together", sets, grid.filter(sensible)),
  ];
}

/** Played again at the thresholds of now, every saying must end as it did: else the study studies something else. */
export const replayDisagreements = (trials: readonly Trial[]): readonly Trial[] =>
  trials.filter((trial) => atThresholds(trial, THRESHOLDS) !== trial.outcome);
