import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { digitSoundAlikes, soundAlikes } from "../../../src/language/numbers/soundAlikes.ts";
import { wordsToNumber } from "../../../src/language/numbers/wordsToNumber.ts";
import { sayNumber } from "../../../src/language/sentences/number.ts";

/** Teen and ty pairs: 14/40 from a nuclear pharmacy safety article of 2015, the rest from memory. */
const PAIRS: readonly (readonly [number, number])[] = [
  [13, 30],
  [14, 40],
  [15, 50],
  [16, 60],
  [17, 70],
  [18, 80],
  [19, 90],
];

const values = (said: string): readonly number[] => soundAlikes(said.split(" ")).map((other) => other.value);

describe("soundAlikes", () => {
  it.each(PAIRS)("%d and %d, both ways, alone and after a hundred", (teen, ty) => {
    expect(values(sayNumber(teen, 0))).toEqual([ty]);
    expect(values(sayNumber(ty, 0))).toEqual([teen]);
    expect(values(sayNumber(100 + teen, 0))).toEqual([100 + ty]);
    expect(values(`a hundred and ${sayNumber(ty, 0)}`)).toEqual([100 + teen]);
    expect(digitSoundAlikes(teen).map((o) => o.value)).toEqual([ty]);
    expect(digitSoundAlikes(200 + ty).map((o) => o.value)).toEqual([200 + teen]);
  });

  it.each<[said: string, others: readonly number[]]>([
    ["one thirteen", [130]],
    ["fifty", [15]],
    ["fifty thousand", [15000]],
    ["fifteen hundred", []],
    ["thirty point five", [13.5]],
    ["fifty five", []],
    ["one five", []],
    ["five zero", []],
    ["one one five", []],
    ["ten", []],
    ["twelve", []],
    ["twenty", []],
    ["one ten", []],
    ["one twenty", []],
    ["a hundred and four", []],
    ["thirty thirty", []],
    ["niner", [90]],
    ["nine oh", [9]],
    ["nine zero", []],
    ["one niner", [190]],
    ["one nine oh", [19]],
    ["niner four", []],
    ["nine oh five", []],
    ["nine", []],
    ["", []],
  ])("%j could be %j", (said, others) => expect(values(said)).toEqual(others));

  it("says the other number in words that read as its value", () => {
    expect(soundAlikes(["a", "hundred", "and", "fifteen"])).toEqual([{ value: 150, words: "a hundred and fifty" }]);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 999 }), (n) => {
        for (const other of digitSoundAlikes(n)) {
          expect(wordsToNumber(other.words.split(" "))).toEqual({ ok: true, value: other.value });
          expect(other.value).not.toBe(n);
          // What A could be taken for could be taken for A.
          expect(digitSoundAlikes(other.value).map((o) => o.value)).toContain(n);
        }
      }),
    );
  });

  it.each([0, 5, 10, 12, 20, 22, 55, 99, 105, 110, 120, 0.15, 36.5, -15, Number.NaN])("digits %d: none", (value) =>
    expect(digitSoundAlikes(value)).toEqual([]),
  );

  it("keeps the decimals of digits", () => expect(digitSoundAlikes(30.5).map((o) => o.value)).toEqual([13.5]));
});
