import { roundedDose, roundedText, withoutTrailingZeros } from "../../core/shownNumber.ts";
import { PLAIN_DIGITS, TEENS, TENS } from "../numbers/numberWords.ts";

export { roundedDose, showAmount, showExactly, showNumber } from "../../core/shownNumber.ts";

/** Above this a number is said digit by digit: no vital or dose is that large. */
const MAX_SPOKEN = 99_999;

const digitWord = (digit: string): string => PLAIN_DIGITS[Number(digit)] ?? "";
const digitWords = (digits: string): string => [...digits].map(digitWord).join(" ");

function sayBelowHundred(n: number): string {
  if (n < 10) return PLAIN_DIGITS[n] ?? "";
  if (n < 20) return TEENS[n - 10] ?? "";
  const ten = TENS[Math.floor(n / 10)] ?? "";
  return n % 10 === 0 ? ten : `${ten} ${PLAIN_DIGITS[n % 10] ?? ""}`;
}

/** "one hundred", "one oh five", "one ten": as vitals are said. */
function sayBelowThousand(n: number): string {
  if (n < 100) return sayBelowHundred(n);
  const [hundreds, rest] = [PLAIN_DIGITS[Math.floor(n / 100)] ?? "", n % 100];
  if (rest === 0) return `${hundreds} hundred`;
  return rest < 10 ? `${hundreds} oh ${sayBelowHundred(rest)}` : `${hundreds} ${sayBelowHundred(rest)}`;
}

function sayWhole(digits: string): string {
  const n = Number(digits);
  if (n > MAX_SPOKEN) return digitWords(digits);
  if (n < 1000) return sayBelowThousand(n);
  const [hundreds, rest] = [Math.floor((n % 1000) / 100), n % 100];
  const parts = [`${sayBelowHundred(Math.floor(n / 1000))} thousand`];
  // In full here: "one thousand two fifty" is easily taken for two numbers.
  if (hundreds > 0) parts.push(`${PLAIN_DIGITS[hundreds] ?? ""} hundred`);
  if (rest > 0) parts.push(`and ${sayBelowHundred(rest)}`);
  return parts.join(" ");
}

function speak(value: number, decimals: 0 | 1 | 2 | 3, whole: (digits: string) => string): string {
  const text = withoutTrailingZeros(roundedText(value, decimals));
  const [integer = "", fraction] = text.replace("-", "").split(".");
  if (!/^\d+$/u.test(integer)) return "no number";
  const sign = text.startsWith("-") ? "minus " : "";
  return sign + whole(integer) + (fraction === undefined ? "" : ` point ${digitWords(fraction)}`);
}

/**
 * A number in plain English: 110 "one ten", 105 "one oh five", 36.5 "thirty six point five", 0.5 "zero point five".
 * Rounds to `decimals`; a zero after the point is not said.
 */
export const sayNumber = (value: number, decimals: 0 | 1 | 2): string => speak(value, decimals, sayWhole);

/** Digit by digit: 110 "one one zero", 36.5 "three six point five". Up to two decimals. */
export const sayDigits = (value: number): string => speak(value, 2, digitWords);

/** "fifteen, one five": for a number that must not be mistaken. One-digit numbers are said once. */
export function sayTwoWays(value: number): string {
  const [whole, digits] = [sayNumber(value, 2), sayDigits(value)];
  return whole === digits ? whole : `${whole}, ${digits}`;
}

/** A rate or an amount as somebody said it: with all three decimals that can be said, "zero point one two five". */
export const sayExactly = (value: number): string => speak(value, 3, sayWhole);

/** The same two ways, where a whole number can be said in two: "sixty, six zero", "zero point one two five". */
export function sayExactlyTwoWays(value: number): string {
  const [whole, digits] = [sayExactly(value), speak(value, 3, digitWords)];
  return whole === digits ? whole : `${whole}, ${digits}`;
}

/** Rates need three decimals under one: 0.025 is not 0.03. From one on, as a dose. */
export const roundedRate = (value: number): number => (value >= 1 ? roundedDose(value) : Number(roundedText(value, 3)));
