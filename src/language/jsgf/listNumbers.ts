/** Gives every list of whole numbers a number: 0 for the first, and the same again for an equal list. */
export type ListNumbers = {
  numberOf(list: readonly number[]): number;
  readonly size: number;
};

/** Lists are kept, not copied: do not change them afterwards. Exact, where a hash alone would only be almost sure. */
export function createListNumbers(): ListNumbers {
  const buckets = new Map<number, number[]>();
  const lists: (readonly number[])[] = [];
  return {
    numberOf(list) {
      const hash = hashOf(list);
      const bucket = buckets.get(hash);
      const known = bucket?.find((number) => areEqual(lists[number]!, list));
      if (known !== undefined) return known;
      const number = lists.push(list) - 1;
      if (bucket === undefined) buckets.set(hash, [number]);
      else bucket.push(number);
      return number;
    },
    get size() {
      return lists.length;
    },
  };
}

function hashOf(list: readonly number[]): number {
  let hash = list.length;
  for (const value of list) {
    hash = Math.imul(hash ^ value, 0x9e3779b1);
    hash ^= hash >>> 15;
  }
  return hash;
}

function areEqual(one: readonly number[], other: readonly number[]): boolean {
  if (one.length !== other.length) return false;
  for (let i = 0; i < one.length; i++) if (one[i] !== other[i]) return false;
  return true;
}
