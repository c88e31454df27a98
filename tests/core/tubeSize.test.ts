import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Mm, Years } from "../../src/core/quantity.ts";
import { nearestTube, spareTubes, tubeDepthByAge, tubeDepthBySize, tubeSizeByAge } from "../../src/core/tubeSize.ts";
import { checkRows } from "../tables/checkRows.ts";
import { DEPTH_BY_AGE_ROWS, DEPTH_BY_SIZE_ROWS, TUBE_ROWS } from "../tables/tubes.ts";

const mm = (n: number): Mm => n as Mm;
const years = (n: number): Years => n as Years;
const taken = (wished: number): number => {
  const tube = nearestTube(wished);
  if (!tube.ok) throw new Error(`no tube of ${wished} mm`);
  return tube.value;
};

checkRows("tube size by age", TUBE_ROWS, ({ years: age, plusMm }) => taken(tubeSizeByAge(years(age), plusMm)));
checkRows("tube depth by age", DEPTH_BY_AGE_ROWS, ({ years: age, plusCm }) => tubeDepthByAge(years(age), plusCm));
checkRows("tube depth by size", DEPTH_BY_SIZE_ROWS, ({ sizeMm }) => tubeDepthBySize(mm(sizeMm)));

describe("the nearest tube that is made", () => {
  it.each([
    [4, 4],
    [4.24, 4],
    [4.25, 4],
    [4.26, 4.5],
    [4.5, 4.5],
    [4.75, 4.5],
    [4.76, 5],
    [2, 2],
    [1.76, 2],
    [10, 10],
    [10.25, 10],
  ])("%d mm leads to %d", (wished, size) => expect(taken(wished)).toBe(size));
  it.each([1.75, 0, -3, 10.26, 31, Infinity, NaN])("none for %d mm", (wished) => {
    expect(nearestTube(wished)).toEqual({ ok: false, error: { kind: "no-such-tube", mm: wished } });
  });
  it("is a multiple of a half and never further off than a quarter", () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 10, noNaN: true }), (wished) => {
        const size = taken(wished);
        expect(Number.isInteger(size * 2)).toBe(true);
        expect(Math.abs(size - wished)).toBeLessThanOrEqual(0.25 + 1e-9);
      }),
    );
  });
});

describe("rules by age count completed years", () => {
  it.each([2, 2.5, 2.99])("at %d years as at two", (age) => {
    expect(tubeSizeByAge(years(age), 3.5)).toBe(4);
    expect(tubeDepthByAge(years(age), 12)).toBe(13);
  });
});

describe("spare tubes", () => {
  it("half a millimetre each way", () => expect(spareTubes(mm(5), mm(5), 0.5)).toEqual([4.5, 5.5]));
  it("around a range", () => expect(spareTubes(mm(7), mm(7.5), 0.5)).toEqual([6.5, 8]));
  it("none that is not made", () => {
    expect(spareTubes(mm(2), mm(2), 0.5)).toEqual([2.5]);
    expect(spareTubes(mm(10), mm(10), 0.5)).toEqual([9.5]);
  });
  it("none that is the same again", () => expect(spareTubes(mm(5), mm(5), 0.2)).toEqual([]));
});
