import { PLAIN_DIGITS, TEENS, TENS } from "./numberWords.ts";

type Form = readonly string[];

/** The ways to join one part of each list, in order. */
const joined = (...parts: readonly (readonly Form[])[]): readonly Form[] =>
  parts.reduce<readonly Form[]>((heads, tails) => heads.flatMap((h) => tails.map((t) => [...h, ...t])), [[]]);

const word = (...words: readonly string[]): readonly Form[] => words.map((w) => [w]);

function digitForms(digit: number): readonly Form[] {
  if (digit === 0) return word("zero", "oh");
  return digit === 9 ? word("nine", "niner") : word(PLAIN_DIGITS[digit] ?? "");
}

const digitByDigit = (digits: string): readonly Form[] =>
  joined(...[...digits].map((digit) => digitForms(Number(digit))));

/** 1 to 99 with the words for ten and more; a single digit below. */
function restForms(n: number): readonly Form[] {
  if (n < 10) return digitForms(n);
  if (n < 20) return word(TEENS[n - 10] ?? "");
  const ten = word(TENS[Math.floor(n / 10)] ?? "");
  return n % 10 === 0 ? ten : joined(ten, digitForms(n % 10));
}

function wholeForms(n: number): readonly Form[] {
  if (n === 0) return word("zero");
  if (n < 10) return digitForms(n);
  const byDigits = digitByDigit(String(n));
  if (n < 100) return [...restForms(n), ...byDigits];
  const [hundreds, rest] = [Math.floor(n / 100), n % 100];
  const hundred = joined(hundreds === 1 ? word("a", "one") : digitForms(hundreds), word("hundred"));
  if (rest === 0) return [...hundred, ...byDigits];
  return [
    ...joined(hundred, [[], ["and"]], restForms(rest)),
    // "one oh five" is there as digits already.
    ...(rest < 10 ? [] : joined(digitForms(hundreds), restForms(rest))),
    ...byDigits,
  ];
}

const fractionForms = (digits: string): readonly Form[] => joined(word("point", "decimal"), digitByDigit(digits));

/**
 * Every way to say a value that the number slots of `grammars/numbers.jsgf` accept.
 *
 * @param value    0 to 999 with at most `decimals` decimals; the list is empty for any other.
 * @param decimals how many digits may be said after the point. A zero at the end may be left out.
 * @returns        word lists, no two alike. Leading zeros ("zero nine five") and, for nought, "oh" are left out:
 *                 only the listening for bare numbers knows them.
 */
export function spokenForms(value: number, decimals: 0 | 1 | 2): readonly Form[] {
  if (!(value >= 0 && value < 1000) || Number(value.toFixed(decimals)) !== value) return [];
  const [integer = "", all = ""] = value.toFixed(decimals).split(".");
  const whole = wholeForms(Number(integer));
  const forms: Form[] = [];
  for (let places = 0; places <= decimals; places++) {
    if (Number(all.slice(places)) > 0) continue;
    if (places === 0) forms.push(...whole);
    else {
      const before = integer === "0" ? [[], ...word("zero", "oh")] : whole;
      forms.push(...joined(before, fractionForms(all.slice(0, places))));
    }
  }
  return forms;
}
