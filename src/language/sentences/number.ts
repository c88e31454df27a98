import { PLAIN_DIGITS, TEENS, TENS } from "../numbers/numberWords.ts";

/** Above this a number is said digit by digit: no vital or dose is that large. */
const MAX_SPOKEN = 99_999;

/**
 * Decimal rounding, half away from zero: the one place where a value is rounded, when it is shown or said.
 * Works on the printed decimal form, so that 0.285 to two places is 0.29.
 */
function roundedText(value: number, decimals: 0 | 1 | 2 | 3): string {
  // Numbers that JavaScript prints with an exponent of their own are either nothing at this precision or too large.
  const scaled = Math.abs(value) < 1e-6 ? 0 : Math.round(Number(`${Math.abs(value)}e${decimals}`));
  if (!Number.isSafeInteger(scaled)) return String(value);
  const digits = String(scaled).padStart(decimals + 1, "0");
  const sign = value < 0 && scaled > 0 ? "-" : "";
  return sign + (decimals === 0 ? digits : `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`);
}

const withoutTrailingZeros = (text: string): string => (text.includes(".") ? text.replace(/\.?0+$/u, "") : text);

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

/** Three figures are all that a dose can use: whole from a hundred on, one decimal from ten on, else two. */
export const roundedDose = (value: number): number =>
  Number(roundedText(value, value >= 100 ? 0 : value >= 10 ? 1 : 2));

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

const grouped = (text: string): string => {
  const [integer = "", fraction] = text.split(".");
  // A no-break space: a number must never be broken over two lines.
  const groups = integer.replace(/\B(?=(\d{3})+$)/gu, "\u00a0");
  return fraction === undefined ? groups : `${groups}.${fraction}`;
};

/** A measured number as printed: leading zero always, exactly `decimals` decimals, thousands grouped by a space. */
export const showNumber = (value: number, decimals: 0 | 1 | 2): string =>
  Number.isFinite(value) ? grouped(roundedText(value, decimals)) : "no number";

/** A rate or an amount as somebody said it, printed: up to three decimals, no trailing zero (0.025, 5). */
export const showExactly = (value: number): string =>
  Number.isFinite(value) ? grouped(withoutTrailingZeros(roundedText(value, 3))) : "no number";

/** An amount as printed, such as a dose: as `showNumber`, but never a trailing zero (5, not 5.0). */
export const showAmount = (value: number): string =>
  Number.isFinite(value) ? grouped(withoutTrailingZeros(roundedText(value, 2))) : "no number";
