import fc from "fast-check";
import { linearRegression } from "simple-statistics";
import { describe, expect, it } from "vitest";
import type { Quantity } from "../../src/core/quantity.ts";
import { minutesUntil, slopePerMin, type Reading } from "../../src/core/trend.ts";
import { checkRows } from "../tables/checkRows.ts";
import { SLOPE_ROWS, UNTIL_ROWS, type Points } from "../tables/trend.ts";
import { mmHgOf, MIN_MS } from "./courseValues.ts";

const points = (given: Points): Reading<"mmHg">[] =>
  given.map(([atMin, value]) => ({ atMs: atMin * MIN_MS, value: mmHgOf(value) }));
const slopeOf = (given: Points, windowMin = 60) => slopePerMin(points(given), windowMin * MIN_MS);
const perMinute = (n: number) => n as Quantity<"mmHg/min">;
const until = (value: number, level: number, perMin: number) =>
  minutesUntil(mmHgOf(value), mmHgOf(level), perMinute(perMin));

checkRows("slope per minute", SLOPE_ROWS, (given) => slopeOf(given) ?? Number.NaN);
checkRows("minutes until", UNTIL_ROWS, ({ value, level, perMin }) => until(value, level, perMin) ?? Number.NaN);

describe("no slope", () => {
  it.each<[string, Points]>([
    ["without readings", []],
    ["of one reading", [[3, 80]]],
    ["of readings at one instant", [[3, 80], [3, 90], [3, 70]]],
  ])("%s", (_name, given) => expect(slopeOf(given)).toBeUndefined()); // prettier-ignore
  it.each([Number.NaN, Infinity, -Infinity])("through a time that is none: %d", (atMin) => {
    expect(slopeOf([[0, 80], [1, 70], [atMin, 60]], Infinity)).toBeUndefined(); // prettier-ignore
  });
});

describe("the window reaches back from the newest", () => {
  const steep: Points = [[0, 200], [5, 90], [10, 80]]; // prettier-ignore
  it("a reading exactly as old as it belongs to it", () => {
    expect(slopeOf(steep, 5)).toBeCloseTo(-2, 9);
    expect(slopeOf(steep, 10)).toBeCloseTo(-12, 9);
  });
  it("an older one does not", () => {
    expect(slopeOf(steep, 9.999)).toBeCloseTo(-2, 9);
    expect(slopeOf(steep, 4.999)).toBeUndefined();
  });
  it("the order in which they are given does not matter", () => {
    expect(slopeOf([...steep].reverse(), 5)).toBeCloseTo(-2, 9);
  });
});

const reading = fc.record({
  // Whole seconds of today's clock: large numbers, where a sum of squares would lose the seconds.
  atMs: fc.integer({ min: 0, max: 3_600 }).map((s) => 1_760_000_000_000 + s * 1_000),
  value: fc.integer({ min: 0, max: 300 }).map(mmHgOf),
});

describe("properties", () => {
  it("a value that never moved has a slope of exactly 0", () => {
    const at = fc.integer({ min: 0, max: 3_600_000 });
    fc.assert(
      fc.property(fc.array(at, { maxLength: 30 }), fc.integer({ min: 0, max: 3_000 }), (times, tenths) => {
        fc.pre(new Set(times).size > 1);
        const still = times.map((atMs) => ({ atMs, value: mmHgOf(tenths / 10) }));
        expect(slopePerMin(still, Infinity)).toBe(0);
      }),
    );
  });
  it("does not lose the seconds in the size of the clock", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3_600 }), fc.integer({ min: -100, max: 100 }), (seconds, rise) => {
        const startMs = 1_760_000_000_000;
        const pair = [
          { atMs: startMs, value: mmHgOf(110) },
          { atMs: startMs + seconds * 1_000, value: mmHgOf(110 + rise) },
        ];
        const expected = (rise * 60) / seconds;
        expect(Math.abs(slopePerMin(pair, Infinity)! - expected)).toBeLessThanOrEqual(1e-12 * Math.abs(expected));
      }),
    );
  });
  it("agrees with a general library", () => {
    fc.assert(
      fc.property(fc.array(reading, { maxLength: 30 }), fc.integer({ min: 0, max: 60 }), (readings, windowMin) => {
        const newestMs = Math.max(...readings.map(({ atMs }) => atMs));
        const inWindow = readings.filter(({ atMs }) => atMs >= newestMs - windowMin * MIN_MS);
        fc.pre(new Set(inWindow.map(({ atMs }) => atMs)).size > 1);
        const judged = linearRegression(inWindow.map(({ atMs, value }) => [(atMs - newestMs) / MIN_MS, value]));
        const slope = slopePerMin(readings, windowMin * MIN_MS)!;
        // The library's own sums lose more than ours; seconds apart, slopes reach 18,000 a minute.
        expect(Math.abs(slope - judged.m)).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(judged.m)));
      }),
    );
  });
  it("is finite or undefined, whatever the numbers", () => {
    const wild = fc.record({ atMs: fc.double(), value: fc.double({ min: -300, max: 300, noNaN: true }).map(mmHgOf) });
    fc.assert(
      fc.property(fc.array(wild), fc.double(), (readings, windowMs) => {
        const slope = slopePerMin(readings, windowMs);
        if (slope !== undefined) expect(Number.isFinite(slope)).toBe(true);
      }),
    );
  });
  it("walking the line for as long as it says arrives at the level", () => {
    fc.assert(
      fc.property(fc.integer({ min: 61, max: 300 }), fc.integer({ min: 1, max: 500 }), (value, tenths) => {
        const perMin = -tenths / 10;
        expect(value + perMin * until(value, 60, perMin)!).toBeCloseTo(60, 9);
      }),
    );
  });
});

describe("minutes until a level", () => {
  it("is 0 at the level and under it, even when rising", () => {
    expect([until(60, 60, -1), until(59, 60, -1), until(59, 60, 1), until(60, 60, 0)]).toEqual([0, 0, 0, 0]);
  });
  it("is unknown above it while not falling", () => {
    expect([until(61, 60, 0), until(61, 60, 1), until(61, 60, 0.001)]).toEqual([undefined, undefined, undefined]);
  });
  it("is unknown when the number of minutes is past counting", () => {
    expect(until(61, 60, -5e-324)).toBeUndefined();
  });
});
