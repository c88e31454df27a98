import type { Years } from "./quantity.ts";
import type { ShockIndex } from "./shockIndex.ts";

/** One row of the protocol's table: holds from the first age up to, but without, the second. */
export type ChildShockLimit = { readonly fromAgeA: number; readonly belowAgeA: number; readonly upper: number };

export type ChildShock<Row> =
  /** Nothing is published for this age. */
  { readonly kind: "no-limit" } | { readonly kind: "within" | "above"; readonly limit: Row };

/**
 * A child's shock index against the upper limit of its age.
 *
 * @param ageA  years.
 * @param index shock index, HR / SBP.
 * @param rows  upper limits by age in years, from the protocol; the first that fits counts.
 * @returns     `above` where the index exceeds the limit, `within` at it or under, with the row it was held against; or
 *              `no-limit`.
 *
 * Errors: none.
 * Not for: adults, whose limits are others; infants, for whom there is no row.
 * Source: the rows are the protocol's, with theirs.
 */
export function childShock<Row extends ChildShockLimit>(
  ageA: Years,
  index: ShockIndex,
  rows: readonly Row[],
): ChildShock<Row> {
  const limit = rows.find((row) => row.fromAgeA <= ageA && ageA < row.belowAgeA);
  if (limit === undefined) return { kind: "no-limit" };
  return { kind: index > limit.upper ? "above" : "within", limit };
}
