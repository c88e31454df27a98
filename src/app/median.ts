/** The middle of some numbers, the mean of the two middle ones where there are two; undefined of none. */
export function median(values: readonly number[]): number | undefined {
  const sorted = values.toSorted((a, b) => a - b);
  const at = Math.floor(sorted.length / 2);
  const upper = sorted[at];
  if (upper === undefined) return undefined;
  return sorted.length % 2 === 1 ? upper : ((sorted[at - 1] ?? upper) + upper) / 2;
}
