import type { Quantity, Years } from "./quantity.ts";

/**
 * The oldest age that is told exactly, years: those of the very old can tell who somebody is. Anyone older is "over 89", and
 * stands in the record with one year more than this.
 *
 * Source: the safe harbour of the US privacy rule, 45 CFR 164.514(b)(2)(i)(C), from memory.
 */
export const OLDEST_EXACT_A = 89;

/** What dividing months by twelve and multiplying again may lose. */
const LOST_MONTHS = 1e-9;

/**
 * Age in completed months, as rules by age count it.
 *
 * @param ageA age, years; months are parts of a year.
 * @returns    whole months, rounded down.
 *
 * Source: definition.
 */
export const completedMonths = (ageA: Years): Quantity<"months"> =>
  Math.floor(ageA * 12 + LOST_MONTHS) as Quantity<"months">;

/**
 * Age in completed years: a child of six and a half is six, so that both ways of saying it lead to the same number.
 *
 * @param ageA age, years.
 * @returns    whole years, rounded down.
 *
 * Source: definition.
 */
export const completedYears = (ageA: Years): Years => Math.floor(completedMonths(ageA) / 12) as Years;
