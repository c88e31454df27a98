import type { Strength } from "../../core/concentration.ts";
import type { DoseUnit } from "../../core/doseUnits.ts";
import type { SaidAmount, SaidRate } from "../../log/careFacts.ts";
import { sayDoseUnit } from "./doseUnit.ts";
import { soundAlikes } from "../numbers/soundAlikes.ts";
import { roundedDose, sayExactly, sayExactlyTwoWays } from "./number.ts";

/** Under a tenth, two decimals are too few figures for a dose: the smaller unit has them. */
const SMALLER: Readonly<Partial<Record<DoseUnit, DoseUnit>>> = { g: "mg", mg: "mcg" };

/**
 * A worked-out amount as it is said: three figures, and in the smaller unit where it would be under a tenth. What is said
 * is what goes into the record, so nothing is read back that is not recorded.
 */
export function spokenAmount({ value, unit }: SaidAmount): SaidAmount {
  const smaller = value < 0.1 ? SMALLER[unit] : undefined;
  return smaller === undefined
    ? { value: roundedDose(value), unit }
    : spokenAmount({ value: value * 1000, unit: smaller });
}

/** The same, in the smaller unit already under one: labels say "one hundred micrograms", not a tenth of a milligram. */
export function wholeAmount({ value, unit }: SaidAmount): SaidAmount {
  const smaller = value < 1 ? SMALLER[unit] : undefined;
  return spokenAmount(smaller === undefined ? { value, unit } : { value: value * 1000, unit: smaller });
}

/** One of the unit: "one milligram", "one microgram per minute". */
const single = (words: string): string => words.replace(/^(\w+)s\b/u, "$1");

function withUnit(number: string, { value, unit }: SaidAmount | SaidRate): string {
  const words = sayDoseUnit(unit);
  if (number.includes(",")) return `${number}, ${words}`;
  return `${number} ${value === 1 ? single(words) : words}`;
}

/** "sixty, six zero, milligrams"; "one gram". For a number that must not be mistaken. */
export const sayAmount = (amount: SaidAmount): string => withUnit(sayExactlyTwoWays(amount.value), amount);
/** "sixty milligrams", where it was read back before. */
export const sayAmountOnce = (amount: SaidAmount): string => withUnit(sayExactly(amount.value), amount);

/** The same where it is short of time: two ways only where it sounds like another number. */
export const sayAmountSafely = (amount: SaidAmount): string =>
  soundAlikes(sayExactly(amount.value).split(" ")).length > 0 ? sayAmount(amount) : sayAmountOnce(amount);

/** "zero point one micrograms per kilo per minute", "thirty, three zero, millilitres per hour". */
export const sayRate = (rate: SaidRate): string => withUnit(sayExactlyTwoWays(rate.value), rate);
export const sayRateOnce = (rate: SaidRate): string => withUnit(sayExactly(rate.value), rate);

const inMl = (value: number): SaidAmount => ({ value, unit: "mL" });
export const sayMl = (volumeMl: number): string => sayAmount(inMl(volumeMl));
export const sayMlOnce = (volumeMl: number): string => sayAmountOnce(inMl(volumeMl));

/** "fifty, five zero, milligrams in one millilitre". */
export const sayStrength = ({ amount, unit, volumeMl }: Strength): string =>
  `${sayAmount({ value: amount, unit })} in ${sayMl(volumeMl)}`;
export const sayStrengthOnce = ({ amount, unit, volumeMl }: Strength): string =>
  `${sayAmountOnce({ value: amount, unit })} in ${sayMlOnce(volumeMl)}`;
