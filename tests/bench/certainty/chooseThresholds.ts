import { STATEMENT_KINDS, type StatementKind, type Thresholds } from "../../../src/listener/certainty.ts";

/** One utterance with its certainty, and what taking it would do. */
export type Judged = {
  readonly kind: StatementKind;
  readonly certainty: number;
  /** Said to the app, in its language. */
  readonly isMeant: boolean;
  /** Taken, it would put something wrong on record, or do something that was not said. */
  readonly isWrongIfTaken: boolean;
};

/** What may go wrong at most, as shares. `wrong`: of the meant utterances of a kind. The others: of all that was not meant. */
export type Allowed = { readonly wrong: number; readonly talkTaken: number; readonly talkAsked: number };

const GRID = Array.from({ length: 991 }, (_, i) => (i + 10) / 1000).map((t) => Math.round(t * 1000) / 1000);
/** Nothing is asked back that is less likely than not. */
const LEAST_ASK = 0.5;
/** Taking begins no lower, however few mistakes were seen: a kind that was heard a hundred times shows none by luck. */
const LEAST_TAKE = 0.9;
const MOST_TAKE = 0.999;
const CAUTION = 0.5;

/**
 * For each kind of statement the lowest certainty, of those that may do, from which taking stays within what is allowed. With caution half of that
 * is allowed. Where even the highest does not, the highest it is.
 */
export function chooseThresholds(
  judged: readonly Judged[],
  allowed: Readonly<Record<StatementKind, Allowed>>,
): Readonly<Record<StatementKind, Thresholds>> {
  const unmeant = judged.filter((j) => !j.isMeant).length;
  const entries = STATEMENT_KINDS.map((kind) => {
    const of = judged.filter((j) => j.kind === kind);
    const meant = of.filter((j) => j.isMeant).length;
    const above = (t: number, is: (j: Judged) => boolean): number => of.filter((j) => j.certainty >= t && is(j)).length;
    const { wrong, talkTaken, talkAsked } = allowed[kind];
    const isSafe = (t: number, share: number): boolean =>
      above(t, (j) => j.isMeant && j.isWrongIfTaken) <= share * wrong * meant &&
      above(t, (j) => !j.isMeant && j.isWrongIfTaken) <= share * talkTaken * unmeant;
    const lowest = (share: number): number => GRID.find((t) => t >= LEAST_TAKE && isSafe(t, share)) ?? MOST_TAKE;
    const take = Math.min(MOST_TAKE, lowest(1));
    const ask = GRID.find((t) => t >= LEAST_ASK && above(t, (j) => !j.isMeant) <= talkAsked * unmeant) ?? take;
    const takeWithCaution = Math.min(MOST_TAKE, Math.max(take, lowest(CAUTION)));
    return [kind, { take, takeWithCaution, ask: Math.min(ask, take - 0.001) }] as const;
  });
  return Object.fromEntries(entries) as Readonly<Record<StatementKind, Thresholds>>;
}
