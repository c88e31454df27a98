import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Reading } from "../../src/core/trend.ts";
import { dropSince, hasChangedByPct, lowestSince } from "../../src/core/trendSince.ts";
import { checkRows } from "../tables/checkRows.ts";
import { DROP_PCT_ROWS } from "../tables/trend.ts";
import { mmHgOf, pctOf } from "./courseValues.ts";

const drop = (first: number, now: number) => dropSince(mmHgOf(first), mmHgOf(now));
const changed = (change: "rise" | "fall", first: number, now: number, pct: number) =>
  hasChangedByPct(change, mmHgOf(first), mmHgOf(now), pctOf(pct));

checkRows("fall in per cent", DROP_PCT_ROWS, ({ first, now }) => drop(first, now).pct ?? Number.NaN);

describe("fall since the first value", () => {
  it("is also given in the unit", () => expect(drop(120, 96)).toEqual({ by: 24, pct: 20 }));
  it("is negative after a rise", () => expect(drop(80, 100)).toEqual({ by: -20, pct: -25 }));
  it.each([0, -5])("has no per cent of %d", (first) => {
    expect(drop(first, -10)).toEqual({ by: first + 10 });
  });
  it("by and per cent tell of the same fall", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), fc.integer({ min: -50, max: 300 }), (first, now) => {
        const { by, pct } = drop(first, now);
        expect(first - by).toBe(now);
        expect(first * (1 - pct! / 100)).toBeCloseTo(now, 9);
      }),
    );
  });
});

describe("moved by so many per cent", () => {
  it.each([
    ["rise", 100, 120, 20, true],
    ["rise", 100, 119, 20, false],
    ["rise", 100, 80, 20, false],
    ["fall", 100, 80, 20, true],
    ["fall", 100, 81, 20, false],
    ["fall", 100, 120, 20, false],
    // 29 / 100 × 100 is a hair under 29 in doubles.
    ["rise", 100, 129, 29, true],
    ["fall", 100, 71, 29, true],
    ["rise", 0, 120, 20, false],
    ["fall", -10, -20, 20, false],
    ["rise", 90, 90, 0, false],
    ["fall", 90, 90, 0, false],
    ["fall", 90, 89, 0, true],
  ] as const)("a %s from %d to %d by %d %%: %s", (change, first, now, pct, expected) => {
    expect(changed(change, first, now, pct)).toBe(expected);
  });
  it("is exact on whole numbers", () => {
    const whole = fc.integer({ min: 1, max: 300 });
    fc.assert(
      fc.property(whole, whole, fc.integer({ min: 1, max: 100 }), (first, now, pct) => {
        const hundredfold = BigInt(now - first) * 100n;
        expect(changed("rise", first, now, pct)).toBe(hundredfold >= BigInt(pct * first));
        expect(changed("fall", first, now, pct)).toBe(-hundredfold >= BigInt(pct * first));
      }),
    );
  });
});

describe("lowest since", () => {
  const at = (atMs: number, value: number): Reading<"mmHg"> => ({ atMs, value: mmHgOf(value) });
  it("counts from that very moment on", () => {
    const readings = [at(1, 40), at(5, 50), at(6, 70)];
    expect(lowestSince(readings, 5)).toEqual(at(5, 50));
    expect(lowestSince(readings, 5.001)).toEqual(at(6, 70));
    expect(lowestSince(readings, 1)).toEqual(at(1, 40));
  });
  it("is none where there is no reading", () => {
    expect(lowestSince([], 0)).toBeUndefined();
    expect(lowestSince([at(1, 40)], 2)).toBeUndefined();
    expect(lowestSince([at(1, 40)], Number.NaN)).toBeUndefined();
  });
  it("of equals is the earliest, in whatever order they come", () => {
    expect(lowestSince([at(7, 50), at(3, 50), at(9, 50)], 0)).toEqual(at(3, 50));
    expect(lowestSince([at(3, 50), at(9, 50)], 0)).toEqual(at(3, 50));
  });
  it("a lower one that comes later wins, a higher one that comes earlier does not", () => {
    expect(lowestSince([at(3, 50), at(9, 49)], 0)).toEqual(at(9, 49));
    expect(lowestSince([at(9, 49), at(3, 50)], 0)).toEqual(at(9, 49));
  });
  it("is the first of two at one instant", () => {
    const [first, second] = [at(3, 50), at(3, 50)];
    expect(lowestSince([first, second], 0)).toBe(first);
  });
});
