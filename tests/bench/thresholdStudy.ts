import { THRESHOLDS } from "../../src/listener/thresholds.ts";
import { OUTCOMES, worstOf, type Outcome } from "./judge.ts";
import { outcomeAt, type Thresholds } from "./replay.ts";
import type { Cell, Table } from "./report.ts";
import type { Trial } from "./trial.ts";

const M1_TAKE = [-0.12, -0.206, -0.3, -0.4, -0.5];
const M1_ASK = [-0.3, -0.45, -0.6, -0.8, -1];
const M2_TAKE = [1.5, 2.59, 4, 5, 6];
/** Of these the whole grid is played; the others one by one. */
const GRID_M1_ASK = [-0.45, -0.6];
const M2_ASK = [0, 0.2, 0.4, 1];

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
  const isNow = (t: Thresholds): boolean =>
    t.m1Take === THRESHOLDS.m1Take &&
    t.m1Ask === THRESHOLDS.m1Ask &&
    t.m2Take === THRESHOLDS.m2Take &&
    t.m2Ask === THRESHOLDS.m2Ask;
  return {
    title,
    notes: [
      "Counts, except where per cent is said. The sound was heard once; the rules of the app were played again at each setting.",
    ],
    columns: ["m1Take", "m1Ask", "m2Take", "m2Ask", "", ...sets.flatMap(columnsOf)],
    rows: settings.map((t) => [
      t.m1Take,
      t.m1Ask,
      t.m2Take,
      t.m2Ask,
      isNow(t) ? "now" : "",
      ...sets.flatMap((set) => cellsOf(set, t)),
    ]),
  };
}

const around = (changes: readonly Partial<Thresholds>[]): readonly Thresholds[] =>
  changes.map((change) => ({ ...THRESHOLDS, ...change })).filter((t) => t.m1Ask <= t.m1Take && t.m2Ask <= t.m2Take);

/** Each threshold moved by itself from where it is now, then both pairs together. */
export function thresholdTables(sets: readonly StudySet[]): readonly Table[] {
  const grid = M1_TAKE.flatMap((m1Take) =>
    M2_TAKE.flatMap((m2Take) => GRID_M1_ASK.map((m1Ask) => ({ m1Take, m2Take, m1Ask }))),
  );
  return [
    sweep("Thresholds: m1Take alone", sets, around(M1_TAKE.map((m1Take) => ({ m1Take })))),
    sweep("Thresholds: m1Ask alone", sets, around(M1_ASK.map((m1Ask) => ({ m1Ask })))),
    sweep("Thresholds: m2Take alone", sets, around(M2_TAKE.map((m2Take) => ({ m2Take })))),
    sweep("Thresholds: m2Ask alone", sets, around(M2_ASK.map((m2Ask) => ({ m2Ask })))),
    sweep("Thresholds: together", sets, around(grid)),
  ];
}

/** Played again at the thresholds of now, every saying must end as it did: else the study studies something else. */
export const replayDisagreements = (trials: readonly Trial[]): readonly Trial[] =>
  trials.filter((trial) => atThresholds(trial, THRESHOLDS) !== trial.outcome);
