/** One thing that is handed over. */
export type Line = {
  /** The same for the same thing at any time: what was said is not said twice, nor lost. */
  readonly key: string;
  /** How dear it is: what has a higher one gives way first where time is short; 0 never does. */
  readonly rank: number;
  /** Whole, then in fewer words each time. What the fewer leave out is not yet said. */
  readonly wordings: readonly [string, ...string[]];
};

export const comma = (...parts: readonly (string | undefined)[]): string =>
  parts.filter((part) => part !== undefined && part !== "").join(", ");

/** None without words; a shorter wording that is as long as the whole is none. */
export function line(
  key: string,
  rank: number,
  whole: string,
  ...briefer: readonly (string | undefined)[]
): readonly Line[] {
  if (whole === "") return [];
  const shorter = briefer.flatMap((words) => (words === undefined || words.length >= whole.length ? [] : [words]));
  return [{ key, rank, wordings: [whole, ...shorter] }];
}
