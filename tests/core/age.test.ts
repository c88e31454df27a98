import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { completedMonths, completedYears } from "../../src/core/age.ts";
import type { Years } from "../../src/core/quantity.ts";

const years = (n: number): Years => n as Years;

describe("ages in completed months and years", () => {
  it("loses no month to the division by twelve, up to 110 years", () => {
    for (let months = 0; months <= 110 * 12; months++) {
      expect(completedMonths(years(months / 12))).toBe(months);
      expect(completedYears(years(months / 12))).toBe(Math.floor(months / 12));
    }
  });
  it.each([
    [0, 0, 0],
    [0.08, 0, 0],
    [0.99, 11, 0],
    [1.99, 23, 1],
    [6.5, 78, 6],
    [110, 1320, 110],
  ])("%d years is %d months, %d years", (age, months, whole) => {
    expect(completedMonths(years(age))).toBe(months);
    expect(completedYears(years(age))).toBe(whole);
  });
  it("never runs ahead of the age by more than the rounding, nor a year behind", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 110, noNaN: true }), (age) => {
        expect(completedYears(years(age))).toBeLessThanOrEqual(age + 1e-9);
        expect(completedYears(years(age))).toBeGreaterThan(age - 1);
      }),
    );
  });
});
