import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rateLowerPerHour, rateUpperPerHour, wilson } from "./wilson.ts";

/** Source: the printed examples of the npm library `wilson-score-interval`, its README. */
const LIBRARY_ROWS = [
  { count: 430, n: 474, low: 0.8776750858242243, high: 0.9301239839930541 },
  { count: 392, n: 436, low: 0.8672311846637769, high: 0.9239627360567735 },
  { count: 10, n: 14, low: 0.4535045882751561, high: 0.882788120898909 },
] as const;

describe("wilson agrees with a general library", () => {
  it.each(LIBRARY_ROWS)("$count of $n", ({ count, n, low, high }) => {
    // Close to four digits: the library may round 1.959964 to 1.96.
    expect(wilson(count, n).low).toBeCloseTo(low, 4);
    expect(wilson(count, n).high).toBeCloseTo(high, 4);
  });
});

it("knows nothing from nothing", () => {
  expect(wilson(0, 0)).toEqual({ low: 0, high: 1 });
});

it("holds the share, mirrors it, and stays between 0 and 1", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 5_000 }), fc.double({ min: 0, max: 1, noNaN: true }), (n, part) => {
      const count = Math.round(n * part);
      const { low, high } = wilson(count, n);
      const mirrored = wilson(n - count, n);
      expect(low).toBeGreaterThanOrEqual(0);
      expect(low).toBeLessThanOrEqual(count / n + 1e-12);
      expect(high).toBeGreaterThanOrEqual(count / n - 1e-12);
      expect(high).toBeLessThanOrEqual(1);
      expect(mirrored.low).toBeCloseTo(1 - high, 9);
    }),
  );
});

/** 95 % limits of a Poisson count. Source: Garwood's table as reprinted in medical statistics (0, 1, 5 and 10 events). */
const POISSON_ROWS = [
  { count: 0, lower: 0, upper: 3.689 },
  { count: 1, lower: 0.0253, upper: 5.572 },
  { count: 5, lower: 1.6235, upper: 11.668 },
  { count: 10, lower: 4.7954, upper: 18.39 },
] as const;

describe("a rate per hour", () => {
  it.each(POISSON_ROWS)("$count events in one hour: $lower to $upper", ({ count, lower, upper }) => {
    expect(rateUpperPerHour(count, 1)).toBeCloseTo(upper, 2);
    expect(rateUpperPerHour(count, 10)).toBeCloseTo(upper / 10, 3);
    expect(rateLowerPerHour(count, 1)).toBeCloseTo(lower, 3);
  });
});
