/*
 * What a case is called aloud: a letter of the radiotelephony alphabet and two digits, "kilo four seven". It says nothing of
 * the patient, and no two letters or digits of it sound alike.
 */

/** The ITU and ICAO spelling alphabet; ICAO Annex 10, volume II, 5.2.1.3 (from memory). */
const LETTERS = [
  "alfa",
  "bravo",
  "charlie",
  "delta",
  "echo",
  "foxtrot",
  "golf",
  "hotel",
  "india",
  "juliett",
  "kilo",
  "lima",
  "mike",
  "november",
  "oscar",
  "papa",
  "quebec",
  "romeo",
  "sierra",
  "tango",
  "uniform",
  "victor",
  "whiskey",
  "xray",
  "yankee",
  "zulu",
] as const;
const DIGITS = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"] as const;

/** How many labels there are. */
const LABELS = LETTERS.length * DIGITS.length ** 2;

/** The `i`th label; counts round at `LABELS`. */
export function caseLabel(i: number): string {
  const at = ((Math.floor(i) % LABELS) + LABELS) % LABELS;
  const digits = DIGITS.length;
  return [LETTERS[Math.floor(at / digits ** 2)], DIGITS[Math.floor(at / digits) % digits], DIGITS[at % digits]].join(
    " ",
  );
}

/** The label of a case that was given none: always the same one for the same id. */
export function labelFrom(caseId: string): string {
  let sum = 0;
  for (const character of caseId) sum = (sum * 31 + (character.codePointAt(0) ?? 0)) % 1_000_003;
  return caseLabel(sum);
}
