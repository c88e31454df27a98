import { completedMonths, completedYears } from "./age.ts";
import type { Kg, Years } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";

/** The ages in completed months that the formula covers, ends included. */
export type NoFormula = { readonly kind: "no-formula"; readonly fromMonths: number; readonly toMonths: number };

/** The published ages stop at twelve years: the last month is the one before the thirteenth birthday. */
const COVERED = { fromMonths: 1, toMonths: 13 * 12 - 1 } as const;
const OLDER_COVERED = { fromMonths: 12, toMonths: 11 * 12 - 1 } as const;

/**
 * A child's weight guessed from its age, for want of scales, a parent who knows, and a length tape.
 *
 * @param ageA age, years; months are parts of a year. Completed months count in the first year, completed years after it.
 * @returns    0.5 × months + 4 under one year, 2 × years + 8 up to five, 3 × years + 7 up to twelve, kg, unrounded; or
 *             `no-formula` under one month and from the thirteenth birthday on. Always called estimated.
 *
 * Not for: a child whose weight is known. In 93,827 British children 3 × years + 7 read 6.9 % low on average (abstract).
 * Source: APLS, as printed by Marikar, BMJ Innov 2015.
 */
export function weightByAge(ageA: Years): Result<Kg, NoFormula> {
  const months = completedMonths(ageA);
  if (months < COVERED.fromMonths || months > COVERED.toMonths) return fail({ kind: "no-formula", ...COVERED });
  const age = completedYears(ageA);
  const kg = age < 1 ? 0.5 * months + 4 : age <= 5 ? 2 * age + 8 : 3 * age + 7;
  return ok(kg as Kg);
}

/**
 * The superseded form of `weightByAge`, for comparison with charts that still print it.
 *
 * @param ageA age, years; completed years count.
 * @returns    2 × (years + 4), kg, unrounded; or `no-formula` outside one to ten years.
 *
 * Not for: dosing. In 93,827 British children it read 33.4 % low on average (abstract).
 * Source: the older APLS form, as given by the Luscombe and Owens group, Emerg Med J 2011.
 */
export function olderWeightByAge(ageA: Years): Result<Kg, NoFormula> {
  const months = completedMonths(ageA);
  if (months < OLDER_COVERED.fromMonths || months > OLDER_COVERED.toMonths)
    return fail({ kind: "no-formula", ...OLDER_COVERED });
  return ok((2 * (completedYears(ageA) + 4)) as Kg);
}
