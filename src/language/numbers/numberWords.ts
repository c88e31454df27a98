/** Words by the digit they say. Radiotelephony: ICAO Annex 10 vol. II digits, as accepted beside plain English. */
const DIGITS: Readonly<Record<string, number>> = {
  zero: 0,
  oh: 0,
  one: 1,
  two: 2,
  three: 3,
  tree: 3,
  four: 4,
  fower: 4,
  five: 5,
  fife: 5,
  six: 6,
  seven: 7,
  eight: 8,
  ait: 8,
  nine: 9,
  niner: 9,
};

export const TEENS: readonly string[] = [
  "ten",
  "eleven",
  "twelve",
  "thirteen",
  "fourteen",
  "fifteen",
  "sixteen",
  "seventeen",
  "eighteen",
  "nineteen",
];

/** "twenty" is at 2; there is nothing to say at 0 and 1. */
export const TENS: readonly string[] = [
  "",
  "",
  "twenty",
  "thirty",
  "forty",
  "fifty",
  "sixty",
  "seventy",
  "eighty",
  "ninety",
];

export const PLAIN_DIGITS: readonly string[] = [
  "zero",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
];

export type NumberToken =
  | { readonly kind: "digit"; readonly value: number }
  | { readonly kind: "teen"; readonly value: number }
  | { readonly kind: "ten"; readonly value: number }
  | { readonly kind: "a" | "and" | "hundred" | "thousand" | "point" };

const tokens = new Map<string, NumberToken>([
  ...Object.entries(DIGITS).map(([word, value]) => [word, { kind: "digit", value }] as const),
  ...TEENS.map((word, i) => [word, { kind: "teen", value: 10 + i }] as const),
  ...TENS.flatMap((word, i) => (word === "" ? [] : [[word, { kind: "ten", value: 10 * i }] as const])),
  ["a", { kind: "a" }],
  ["and", { kind: "and" }],
  ["hundred", { kind: "hundred" }],
  ["thousand", { kind: "thousand" }],
  ["point", { kind: "point" }],
  ["decimal", { kind: "point" }],
]);

/** What a word does in a number, or `undefined` when it is no number word. */
export const numberToken = (word: string): NumberToken | undefined => tokens.get(word);
