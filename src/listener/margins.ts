import type { FreePath } from "./phoneScores.ts";
import { MAX_CANDIDATES, type Candidate } from "./search.ts";

/** A path this short is measured as if it had three phones, so that one odd sound cannot look like fluent speech. */
const MIN_PHONES = 3;

/**
 * Was this in the language at all? What the grammar cost per phone against the free path, in nats: 0 is nothing, and
 * it falls from there.
 */
export function m1(bestScore: number, free: FreePath): number {
  return (bestScore - free.score) / Math.max(MIN_PHONES, free.phones);
}

/**
 * Could it be another meaning? The distance in nats from the best candidate to the best one that means something else.
 *
 * @param candidates best first, as the search gives them.
 * @param meaningOf  equal strings for equal meanings; `undefined` (no meaning) equals nothing.
 * @returns Infinity when no candidate means anything else. From a full list, in which a further meaning may have
 *          found no room, the distance to its last candidate: never more than is known.
 */
export function m2(candidates: readonly Candidate[], meaningOf: (words: string) => string | undefined): number {
  const [best, ...others] = candidates;
  if (best === undefined) return Infinity;
  const meaning = meaningOf(best.words);
  const rival = others.find((other) => meaning === undefined || meaningOf(other.words) !== meaning);
  if (rival !== undefined) return best.score - rival.score;
  const last = candidates.length >= MAX_CANDIDATES ? candidates.at(-1) : undefined;
  return last === undefined ? Infinity : best.score - last.score;
}
