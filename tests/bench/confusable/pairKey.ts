/** One name for a pair of word sequences, whichever comes first. */
export const pairKey = (one: readonly string[], other: readonly string[]): string =>
  [one.join(" "), other.join(" ")].sort().join(" | ");
