import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Kg, Years } from "../../src/core/quantity.ts";
import type { Result } from "../../src/core/result.ts";
import { olderWeightByAge, weightByAge } from "../../src/core/weightByAge.ts";
import { AGE_ROWS, OLDER_AGE_ROWS } from "../tables/body.ts";
import { checkRows } from "../tables/checkRows.ts";

const years = (n: number): Years => n as Years;
const given = (result: Result<Kg, unknown>): number => {
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.error)}`);
  return result.value;
};

checkRows("weight by age", AGE_ROWS, (row) => given(weightByAge(years(row.years))));
checkRows("weight by age, older form", OLDER_AGE_ROWS, (row) => given(olderWeightByAge(years(row.years))));

describe("which formula counts at its edges", () => {
  it.each([
    [1 / 12, 4.5],
    [0.99, 9.5],
    [1, 10],
    [1.5, 10],
    [1.99, 10],
    [5.99, 18],
    [6, 25],
    [6.5, 25],
    [12.99, 43],
  ])("%d years is %d kg", (age, kg) => expect(given(weightByAge(years(age)))).toBe(kg));
  it.each([0, 0.08, 13, 13.1, 40, 110])("%d years has none", (age) => {
    expect(weightByAge(years(age))).toEqual({
      ok: false,
      error: { kind: "no-formula", fromMonths: 1, toMonths: 155 },
    });
  });
  it.each([
    [1.5, 10],
    [10.99, 28],
  ])("older form: %d years is %d kg", (age, kg) => expect(given(olderWeightByAge(years(age)))).toBe(kg));
  it.each([0.99, 11, 60])("older form: %d years has none", (age) => {
    expect(olderWeightByAge(years(age))).toEqual({
      ok: false,
      error: { kind: "no-formula", fromMonths: 12, toMonths: 131 },
    });
  });
});

describe("properties", () => {
  it("an older child is never lighter, and all are possible weights", () => {
    const covered = fc.integer({ min: 1, max: 155 });
    fc.assert(
      fc.property(covered, covered, (a, b) => {
        const [younger, older] = [Math.min(a, b), Math.max(a, b)].map((m) => given(weightByAge(years(m / 12))));
        expect(younger).toBeLessThanOrEqual(older ?? NaN);
        expect(younger).toBeGreaterThanOrEqual(4.5);
        expect(older).toBeLessThanOrEqual(43);
      }),
    );
  });
});
