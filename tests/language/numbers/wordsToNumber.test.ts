import nlp from "compromise";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { wordsToNumber } from "../../../src/language/numbers/wordsToNumber.ts";
import { normalise } from "../../../src/language/normalise/normalise.ts";
import { sayDigits, sayNumber } from "../../../src/language/sentences/number.ts";

const read = (said: string) => wordsToNumber(said === "" ? [] : said.split(" "));

const READ: readonly (readonly [said: string, value: number])[] = [
  ["zero", 0],
  ["oh", 0],
  ["five", 5],
  ["niner", 9],
  ["fifteen", 15],
  ["fifty", 50],
  ["ninety five", 95],
  ["ninety niner", 99],
  ["nine zero", 90],
  ["niner five", 95],
  ["one hundred", 100],
  ["a hundred", 100],
  ["a hundred and four", 104],
  ["one hundred and five", 105],
  ["one hundred five", 105],
  ["one oh five", 105],
  ["one zero five", 105],
  ["one oh", 10],
  ["one oh oh", 100],
  ["one ten", 110],
  ["one one zero", 110],
  ["one one five", 115],
  ["one fifteen", 115],
  ["one twenty", 120],
  ["one two zero", 120],
  ["a hundred and twenty", 120],
  ["one hundred twenty", 120],
  ["two ten", 210],
  ["two fifty", 250],
  ["nine ninety nine", 999],
  ["tree fower fife", 345],
  ["ait niner", 89],
  ["zero nine five", 95],
  ["one five two one three", 15213],
  ["one two three four five six seven", 1234567],
  ["a thousand", 1000],
  ["one thousand two fifty", 1250],
  ["one thousand two hundred and fifty", 1250],
  ["one thousand five", 1005],
  ["a thousand and five", 1005],
  ["two thousand two oh five", 2205],
  ["twelve hundred", 1200],
  ["fifteen hundred and fifty", 1550],
  ["fifteen thousand", 15000],
  ["thirty six point five", 36.5],
  ["three six point five", 36.5],
  ["four decimal seven", 4.7],
  ["point one five", 0.15],
  ["oh point five", 0.5],
  ["zero point five", 0.5],
  ["zero point zero five", 0.05],
  ["one oh one point two", 101.2],
  ["a hundred and one point two", 101.2],
];

const REFUSED: readonly (readonly [said: string, kind: string, why: string])[] = [
  ["", "empty", "nothing said"],
  ["over", "unknown-word", "not a number word"],
  ["one twenty over eighty", "unknown-word", "two numbers"],
  ["one and a half", "unknown-word", "fractions are not listed"],
  ["one twenty eighty", "not-one-number", "a pressure without over: two numbers"],
  ["hundred hundred", "not-one-number", "says nothing"],
  ["hundred", "not-one-number", "how many?"],
  ["a hundred a hundred", "not-one-number", "two numbers"],
  ["twenty ten", "not-one-number", "two numbers"],
  ["twenty fifteen", "not-one-number", "a year or two numbers"],
  ["nineteen eighty", "not-one-number", "a year or two numbers"],
  ["fifteen one five", "not-one-number", "one number said two ways: its halves are read apart"],
  ["thirty six five", "not-one-number", "36.5 or 36 and 5"],
  ["thirty zero", "not-one-number", "30 and 0"],
  ["and five", "not-one-number", "begins in the middle"],
  ["one and five", "not-one-number", "1 and 5"],
  ["one oh fifteen", "not-one-number", "115 or 1, 0, 15"],
  ["one hundred and", "not-one-number", "cut off"],
  ["one hundred oh five", "not-one-number", "105 or 100 and 05"],
  ["one hundred and twenty five six", "not-one-number", "one word too many"],
  ["ten hundred", "not-one-number", "not said"],
  ["twenty five hundred", "not-one-number", "2500 or 20 and 500"],
  ["zero hundred", "not-one-number", "not said"],
  ["a", "not-one-number", "no number"],
  ["a five", "not-one-number", "no number"],
  ["thousand", "not-one-number", "how many?"],
  ["one thousand thousand", "not-one-number", "says nothing"],
  ["one twenty thousand", "not-one-number", "120000 or 1 and 20000"],
  ["one thousand and two hundred", "not-one-number", "no known form"],
  ["one two three four five six seven eight", "too-many-digits", "eight digits"],
  ["point", "not-one-number", "no digits"],
  ["five point", "not-one-number", "cut off"],
  ["point fifteen", "not-one-number", "0.15 or a slip"],
  ["five point one point two", "not-one-number", "two points"],
  ["five point one two three four", "too-many-digits", "four decimals"],
  ["zero five point two", "not-one-number", "0 and 5.2"],
  ["one thousand point five", "not-one-number", "no such value here"],
  ["constructor", "unknown-word", "a word that objects know"],
];

describe("wordsToNumber", () => {
  it.each(READ)("reads %j as %d", (said, value) => expect(read(said)).toEqual({ ok: true, value }));

  it.each(REFUSED)("refuses %j (%s): %s", (said, kind) =>
    expect(read(said)).toMatchObject({ ok: false, error: { kind } }),
  );

  it.each([
    ["thirty six five", 2],
    ["one oh fifteen", 2],
    ["one twenty eighty", 2],
    ["one hundred and", 3],
    ["five point fifteen", 2],
  ])("says where %j goes wrong: at word %d", (said, at) =>
    expect(read(said)).toEqual({ ok: false, error: { kind: "not-one-number", at } }),
  );

  it("agrees with number words written by another library", () => {
    // Outside judge: compromise 14.17.0, numbers().toText(); it writes numbers well, it is its reading that fails.
    const some = [
      ...Array.from({ length: 400 }, (_, n) => n),
      500,
      777,
      999,
      1000,
      1001,
      1015,
      1100,
      1250,
      9999,
      12345,
    ];
    for (const n of some) {
      const words = normalise(String(nlp(String(n)).numbers().toText().text()));
      expect(wordsToNumber(words), words.join(" ")).toEqual({ ok: true, value: n });
    }
  });

  it("reads back every number we say ourselves", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9_999_999 }), (n) => {
        if (n < 100_000) expect(read(sayNumber(n, 0))).toEqual({ ok: true, value: n });
        expect(read(sayDigits(n))).toEqual({ ok: true, value: n });
      }),
    );
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999 }), (n) => {
        expect(read(sayNumber(n / 100, 2))).toEqual({ ok: true, value: n / 100 });
      }),
    );
  });

  it("answers any words, the same way each time, and a value is never negative or unfinished", () => {
    const word = fc.oneof(
      fc.constantFrom(
        ..."a and hundred thousand point decimal zero oh one two nine ten fifteen twenty ninety".split(" "),
      ),
      fc.string(),
    );
    fc.assert(
      fc.property(fc.array(word, { maxLength: 12 }), (words) => {
        const first = wordsToNumber(words);
        expect(wordsToNumber(words)).toEqual(first);
        if (first.ok) expect(Number.isFinite(first.value) && first.value >= 0).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});
