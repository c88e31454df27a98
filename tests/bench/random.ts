/** Chance from a seed: the same seed gives the same run. */
export type Random = {
  /** 0 to just under 1. */
  next(): number;
  /** 0 to `below` − 1. */
  below(below: number): number;
  /** One of a list that is not empty. */
  pick<T>(list: readonly T[]): T;
  /** `count` of them, none twice, in the order of the list; all when there are fewer. */
  sample<T>(list: readonly T[], count: number): readonly T[];
};

/** A linear congruential generator modulo 2^32. Source of its constants: Press and others, Numerical Recipes, 7.1 ("ranqd1"). */
export function createRandom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const below = (limit: number): number => Math.floor(next() * limit);
  return {
    next,
    below,
    pick: (list) => list[below(list.length)]!,
    sample(list, count) {
      const keyed = list.map((item, at) => ({ item, at, key: next() }));
      const kept = keyed.sort((a, b) => a.key - b.key).slice(0, count);
      return kept.sort((a, b) => a.at - b.at).map(({ item }) => item);
    },
  };
}
