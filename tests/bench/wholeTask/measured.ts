import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { RIVAL_WITHIN } from "../../../src/app/interpret.ts";
import type { Outcome } from "../judge.ts";
import { ROOT } from "../lab.ts";
import { wilson } from "../wilson.ts";

/** How one kind of saying fares in one condition: so many of each outcome. */
export type Counts = Readonly<Record<Outcome, number>>;
export type Hearing = {
  readonly condition: string;
  readonly values: Counts;
  readonly answers: Counts;
  /** Of the values asked back with the right one on offer, those where another was offered beside it. */
  readonly besideAnother: number;
};

type Row = {
  readonly condition: string;
  readonly kind: "value" | "answer" | "other";
  readonly outcome: Outcome;
  readonly askedByRule: boolean;
  /** Nats to the next meaning. */
  readonly m2: number;
};

type EvidenceRow = {
  readonly material: string;
  readonly condition: string;
  readonly family: string;
  readonly state: string;
  readonly said: string;
  readonly speaker: string;
  readonly soundS: number;
  readonly outcome: Outcome;
  readonly askedByRule: boolean;
  readonly m2: number;
};
const NOT_VALUES = ["correction", "command", "step", "dose", "why", "answer"];

/** One row of each saying: where several utterances were found in it, each has a row with the outcome of all. */
function firstOfEach(rows: readonly EvidenceRow[]): readonly EvidenceRow[] {
  const keyOf = ({ condition, said, speaker, soundS }: EvidenceRow): string =>
    [condition, said, speaker, soundS].join("|");
  return [...new Map(rows.toReversed().map((row) => [keyOf(row), row])).values()].reverse();
}

function fromEvidence(rows: readonly EvidenceRow[]): readonly Row[] {
  return firstOfEach(rows.filter(({ material }) => material === "statement")).map(
    ({ condition, family, state, outcome, askedByRule, m2 }) => {
      const kind = state === "asked" ? "answer" : NOT_VALUES.includes(family) ? "other" : "value";
      return { condition, kind, outcome, askedByRule, m2 };
    },
  );
}

/** What rules ask back they ask back however well it was heard, so those sayings tell nothing of hearing. */
function count(rows: readonly Row[]): Counts {
  const counts = { right: 0, askedRight: 0, askedWrong: 0, refused: 0, silent: 0, wrong: 0 };
  for (const { outcome } of rows.filter(({ askedByRule }) => !askedByRule)) counts[outcome]++;
  return counts;
}

const EVIDENCE = join(ROOT, "bench", "evidence-test.json");
/** Fewer sayings than this say nothing of a condition. */
const ENOUGH = 100;

/** What `npm run bench -- hearing` measured, by condition. Throws a line for the user where it measured nothing or too little. */
export function measuredHearing(): readonly Hearing[] {
  if (!existsSync(EVIDENCE)) throw new Error("nothing was measured yet: run `npm run bench -- hearing` first");
  const rows = fromEvidence(JSON.parse(readFileSync(EVIDENCE, "utf8")) as readonly EvidenceRow[]);
  const conditions = [...new Set(rows.map(({ condition }) => condition))];
  const hearings = conditions.map((condition) => hearingIn(condition, rows));
  const short = hearings.find(({ values }) => total(values) < ENOUGH);
  if (short !== undefined)
    throw new Error(
      `too little was measured in "${short.condition}": run \`npm run bench -- hearing\` with more statements`,
    );
  return hearings;
}

function hearingIn(condition: string, all: readonly Row[]): Hearing {
  const rows = all.filter((row) => row.condition === condition);
  const values = rows.filter(({ kind }) => kind === "value");
  const asked = values.filter(({ outcome, askedByRule }) => outcome === "askedRight" && !askedByRule);
  return {
    condition,
    values: count(values),
    answers: count(rows.filter(({ kind }) => kind === "answer")),
    besideAnother: asked.filter(({ m2 }) => m2 < RIVAL_WITHIN).length / Math.max(1, asked.length),
  };
}

export const total = (counts: Counts): number => Object.values(counts).reduce((sum, n) => sum + n, 0);

/** The same with as many wrong as the upper end of the 95 % interval allows, taken from what was right. */
export function atItsWorst(counts: Counts): Counts {
  const n = total(counts);
  const wrong = wilson(counts.wrong, n).high * n;
  return { ...counts, wrong, right: Math.max(0, counts.right - (wrong - counts.wrong)) };
}
