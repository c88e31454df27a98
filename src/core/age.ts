import type { Quantity, Years } from "./quantity.ts";

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
