import type { DoseUnit, RateUnit } from "../core/doseUnits.ts";

/**
 * The UCUM code of a unit of a dose or a rate: micrograms are `ug`, units of activity `[IU]`.
 *
 * Source: UCUM 2.1; the reference library judges every code in the tests. That "units" are international ones is common
 * practice for the drugs it is used for, no source.
 */
export const ucumOf = (unit: DoseUnit | RateUnit): string => unit.replace("mcg", "ug").replace("units", "[IU]");

/** Six digits: more than anybody said or measured, and few enough to hide what binary fractions leave behind. */
export const toSixDigits = (value: number): number => Number(value.toPrecision(6));
