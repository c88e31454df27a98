import { groupBy } from "../groupBy.ts";
import type { Random } from "../random.ts";
import type { Evidence } from "./listenAgain.ts";

/** How surely a clip is taken by a rule, in its own scale: the higher, the sooner. */
export type Certainty = (evidence: Evidence) => number;

export type Rule = { readonly name: string; readonly certaintyOf: Certainty };

/** More than any margin: what agrees comes before all that does not. */
const AGREED = 1_000;

/** The first listening alone: what every rule has to beat. */
export const ALONE: Certainty = (evidence) => evidence.m2;

/** The ways in which a further listening can be used. */
export const rulesOf = (copy: string): readonly Rule[] => [
  { name: "must agree", certaintyOf: ({ m2, opinions }) => m2 + (opinions[copy]?.agrees === true ? AGREED : 0) },
  { name: "lower of both", certaintyOf: ({ m2, opinions }) => Math.min(m2, opinions[copy]?.supportNats ?? -AGREED) },
  { name: "mean of both", certaintyOf: ({ m2, opinions }) => (m2 + (opinions[copy]?.supportNats ?? -AGREED)) / 2 },
];

/** Of those that a rule would take first, so many: how many of them are wrong. */
export function wrongAmong(all: readonly Evidence[], certaintyOf: Certainty, count: number): number {
  const keyed = all.map((evidence) => ({ evidence, key: certaintyOf(evidence) })).sort((a, b) => b.key - a.key);
  return keyed.slice(0, count).filter(({ evidence }) => !evidence.isRight).length;
}

export type Fall = {
  readonly alone: number;
  readonly withIt: number;
  /** Wrong ones fewer with it, 95 % interval by bootstrap over sayings. */
  readonly low: number;
  readonly high: number;
};

/**
 * Wrong accepts of the first listening and of a rule at equal acceptance: both take the same number of clips.
 *
 * @param share how many of the clips are taken, 0 to 1.
 */
export function fallAt(
  all: readonly Evidence[],
  certaintyOf: Certainty,
  share: number,
  random: Random,
  resamples: number,
): Fall {
  const falls: number[] = [];
  const groups = [...groupBy(all, ({ saying }) => saying).values()];
  for (let i = 0; i < resamples; i++) {
    const some = groups.flatMap(() => random.pick(groups));
    const count = Math.round(share * some.length);
    falls.push(wrongAmong(some, ALONE, count) - wrongAmong(some, certaintyOf, count));
  }
  falls.sort((a, b) => a - b);
  const at = (q: number): number => falls[Math.floor(q * (falls.length - 1))] ?? 0;
  const count = Math.round(share * all.length);
  return {
    alone: wrongAmong(all, ALONE, count),
    withIt: wrongAmong(all, certaintyOf, count),
    low: at(0.025),
    high: at(0.975),
  };
}
