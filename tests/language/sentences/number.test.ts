import { describe, expect, it } from "vitest";
import { sayDigits, sayNumber, sayTwoWays, showAmount, showNumber } from "../../../src/language/sentences/number.ts";

describe("numbers aloud", () => {
  it.each<[value: number, decimals: 0 | 1 | 2, said: string]>([
    [0, 0, "zero"],
    [7, 0, "seven"],
    [13, 0, "thirteen"],
    [60, 0, "sixty"],
    [77, 0, "seventy seven"],
    [100, 0, "one hundred"],
    [105, 0, "one oh five"],
    [110, 0, "one ten"],
    [200, 0, "two hundred"],
    [250, 0, "two fifty"],
    [1000, 0, "one thousand"],
    [1250, 0, "one thousand two hundred and fifty"],
    [1005, 0, "one thousand and five"],
    [12_000, 0, "twelve thousand"],
    [123_456, 0, "one two three four five six"],
    [36.5, 1, "thirty six point five"],
    [37, 1, "thirty seven"],
    [0.5, 1, "zero point five"],
    [0.05, 2, "zero point zero five"],
    [101.2, 1, "one oh one point two"],
    [76.7, 0, "seventy seven"],
    [-5, 0, "minus five"],
    [-0.2, 0, "zero"],
    [1e-9, 2, "zero"],
    [Number.NaN, 0, "no number"],
    [Number.POSITIVE_INFINITY, 1, "no number"],
  ])("%d to %d decimals is %j", (value, decimals, said) => expect(sayNumber(value, decimals)).toBe(said));

  it.each([
    [110, "one one zero"],
    [15, "one five"],
    [5, "five"],
    [36.5, "three six point five"],
    [0.15, "zero point one five"],
  ])("digits of %d: %j", (value, said) => expect(sayDigits(value)).toBe(said));

  it.each([
    [15, "fifteen, one five"],
    [50, "fifty, five zero"],
    [105, "one oh five, one zero five"],
    [4.5, "four point five"],
    [36.5, "thirty six point five, three six point five"],
    [6, "six"],
  ])("%d two ways: %j", (value, said) => expect(sayTwoWays(value)).toBe(said));
});

describe("numbers printed", () => {
  it.each<[value: number, decimals: 0 | 1 | 2, shown: string]>([
    [77, 0, "77"],
    [36.5, 1, "36.5"],
    [37, 1, "37.0"],
    [0.5, 1, "0.5"],
    [0.285, 2, "0.29"],
    [1.005, 2, "1.01"],
    [2.5, 0, "3"],
    [-2.5, 0, "-3"],
    [-0.4, 0, "0"],
    [999.95, 1, "1\u00a0000.0"],
    [1250, 0, "1\u00a0250"],
    [1_234_567, 0, "1\u00a0234\u00a0567"],
    [0, 1, "0.0"],
    [1e-9, 1, "0.0"],
    [Number.NaN, 0, "no number"],
  ])("%d with %d decimals is %j", (value, decimals, shown) => expect(showNumber(value, decimals)).toBe(shown));

  // ISMP and UK prescribing guidance as noted in the naming guide: leading zero always, trailing zero never.
  it.each([
    [5, "5"],
    [0.5, "0.5"],
    [0.1, "0.1"],
    [12.25, "12.25"],
    [100, "100"],
    [1500, "1\u00a0500"],
    [Number.NaN, "no number"],
  ])("the amount %d is %j", (value, shown) => expect(showAmount(value)).toBe(shown));
});
