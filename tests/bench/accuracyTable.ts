import { OUTCOMES, type Outcome } from "./judge.ts";
import type { Cell, Table } from "./report.ts";
import type { Trial } from "./trial.ts";
import { rateUpperPerHour, wilson } from "./wilson.ts";
import type { Unmeant } from "./falseAccepts.ts";

const percent = (share: number): string => (100 * share).toFixed(1);

/** "93.3 (89.1–96.0)": per cent with its 95 % interval. */
function share(count: number, n: number): string {
  if (n === 0) return "–";
  const { low, high } = wilson(count, n);
  return `${percent(count / n)} (${percent(low)}–${percent(high)})`;
}

const LABELS: Readonly<Record<Outcome, string>> = {
  right: "right at once %",
  askedRight: "asked, right one offered %",
  askedWrong: "asked, right one missing %",
  refused: "refused aloud %",
  silent: "nothing happened %",
  wrong: "WRONG ACCEPTED %",
};

const countOf = (trials: readonly Trial[], outcome: Outcome): number =>
  trials.filter((t) => t.outcome === outcome).length;

/** Quiet first, then from little noise to much. */
const byNoise = (a: string, b: string): number => {
  const [snrA, snrB] = [parseFloat(a), parseFloat(b)];
  return (Number.isNaN(snrB) ? Infinity : snrB) - (Number.isNaN(snrA) ? Infinity : snrA) || 0;
};

function accuracyRow(names: readonly Cell[], trials: readonly Trial[]): readonly Cell[] {
  const n = trials.length;
  const byRule = trials.filter((t) => t.askedByRule).length;
  const unheard = trials.filter((t) => t.replays.length === 0).length;
  return [...names, n, byRule, ...OUTCOMES.map((outcome) => share(countOf(trials, outcome), n)), unheard];
}

export function groupBy<T>(items: readonly T[], keyOf: (item: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key) ?? [];
    group.push(item);
    groups.set(key, group);
  }
  return groups;
}

/** One row for each condition of each group. */
export function accuracyTable(title: string, notes: readonly string[], trials: readonly Trial[]): Table {
  const rows: (readonly Cell[])[] = [];
  const groups = [...groupBy(trials, (t) => t.group)];
  for (const [group, ofGroup] of groups.length > 1 ? [...groups, ["all", trials] as const] : groups)
    for (const [condition, some] of [...groupBy(ofGroup, (t) => t.condition)].sort(([a], [b]) => byNoise(a, b)))
      rows.push(accuracyRow([group, condition], some));
  const columns = [
    "group",
    "condition",
    "n",
    "of these asked by rule",
    ...OUTCOMES.map((o) => LABELS[o]),
    "no utterance found",
  ];
  return { title, notes, columns, rows };
}

/** Every wrong one in words, so that it can be listened to and understood. */
export function wrongTable(title: string, trials: readonly Trial[]): Table {
  const rows = trials
    .filter((t) => t.outcome === "wrong")
    .map((t) => [
      t.group,
      t.condition,
      t.voice,
      t.words,
      t.heard,
      t.replays.map((r) => r.m1.toFixed(2)).join(" / "),
      t.replays.map((r) => r.m2.toFixed(1)).join(" / "),
    ]);
  return { title, notes: [], columns: ["group", "condition", "voice", "said", "heard", "m1", "m2"], rows };
}

/** False accepts: what was not meant for the app, and what it did about it. */
export function falseAcceptTable(
  title: string,
  notes: readonly string[],
  groups: readonly (readonly [name: string, unmeant: Unmeant])[],
): Table {
  const all: Unmeant = {
    trials: groups.flatMap(([, { trials }]) => trials),
    hours: groups.reduce((sum, [, { hours }]) => sum + hours, 0),
  };
  const rows = [...groups, ["all", all] as const].map(([name, { trials, hours }]) => {
    const accepted = countOf(trials, "wrong");
    const asked = countOf(trials, "askedRight") + countOf(trials, "askedWrong");
    return [
      name,
      hours.toFixed(2),
      trials.filter((t) => t.condition === "utterance found").length,
      accepted,
      `${(accepted / hours).toFixed(1)} (up to ${rateUpperPerHour(accepted, hours).toFixed(1)})`,
      asked,
      (asked / hours).toFixed(1),
      countOf(trials, "refused"),
    ];
  });
  const columns = [
    "sound",
    "hours listened",
    "utterances found",
    "accepted",
    "accepted per hour (95 % bound)",
    "asked about",
    "asked per hour",
    '"Say again"',
  ];
  return { title, notes, columns, rows };
}
