import { describe, expect, it } from "vitest";
import {
  addReading,
  lowPressureTotals,
  startLowPressure,
  type LowPressure,
  type PressureReading,
} from "../../src/core/lowPressure.ts";
import { lowPressureDose } from "../../src/core/lowPressureDose.ts";
import { checkRows } from "../tables/checkRows.ts";
import {
  BELOW_ROWS,
  DOSE_HOUR_ROWS,
  DOSE_ROWS,
  NAIVE_DOSE_ROWS,
  SBP_UNDER_90,
  type LowPressureCase,
  type Samples,
} from "../tables/lowPressure.ts";
import { mmHgOf, MIN_MS, readingsOf } from "./courseValues.ts";
import { taken } from "./taken.ts";

const LIMIT_MS = 10 * MIN_MS;

const dose = (samples: Samples, floorMmHg: number, unknownAfterMs = LIMIT_MS) =>
  taken(lowPressureDose(readingsOf(samples), mmHgOf(floorMmHg), unknownAfterMs));

/** Depths cut off at 0 and joined by straight lines: what a hurried program does. */
function naiveDose({ samples, floorMmHg }: LowPressureCase): number {
  const depth = (mmHg: number) => Math.max(0, floorMmHg - mmHg);
  return samples.slice(1).reduce((sum, [atMin, mmHg], i) => {
    const [earlierMin, earlier] = samples[i]!;
    return sum + ((depth(earlier) + depth(mmHg)) / 2) * (atMin - earlierMin);
  }, 0);
}

checkRows("dose, mmHg·min", DOSE_ROWS, ({ samples, floorMmHg }) => dose(samples, floorMmHg).doseMmHgMin);
checkRows("dose, mmHg·h", DOSE_HOUR_ROWS, ({ samples, floorMmHg }) => dose(samples, floorMmHg).doseMmHgMin / 60);
checkRows("minutes below", BELOW_ROWS, ({ samples, floorMmHg }) => dose(samples, floorMmHg).belowMin);
checkRows("the naive dose is wrong as it is known to be", NAIVE_DOSE_ROWS, naiveDose);

it("is not the naive dose", () => {
  const { samples, floorMmHg } = SBP_UNDER_90;
  expect(naiveDose(SBP_UNDER_90) - dose(samples, floorMmHg).doseMmHgMin).toBeCloseTo(16.667, 3);
});

type Sums = readonly [doseMmHgMin: number, belowMin: number, knownMin: number, unknownMin: number];
// prettier-ignore
const CASES: readonly [name: string, samples: Samples, expected: Sums][] = [
  ["no reading", [], [0, 0, 0, 0]],
  ["one low reading", [[3, 40]], [0, 0, 0, 0]],
  ["at the floor all along", [[0, 60], [5, 60]], [0, 0, 5, 0]],
  ["from the floor down", [[0, 60], [4, 50]], [20, 4, 4, 0]],
  ["from below up to the floor", [[0, 50], [4, 60]], [20, 4, 4, 0]],
  ["from the floor up", [[0, 60], [4, 70]], [0, 0, 4, 0]],
  ["touching the floor from above", [[0, 70], [2, 60], [4, 70]], [0, 0, 4, 0]],
  ["above all along", [[0, 70], [5, 61]], [0, 0, 5, 0]],
  ["level below", [[0, 50], [5, 50]], [50, 5, 5, 0]],
  ["falling through", [[0, 70], [4, 50]], [10, 2, 4, 0]],
  ["rising through", [[0, 50], [4, 70]], [10, 2, 4, 0]],
  ["a perfusion pressure under zero", [[0, -10], [1, -10]], [70, 1, 1, 0]],
  ["a gap exactly at the limit is known", [[0, 50], [10, 50]], [100, 10, 10, 0]],
  ["a gap just over the limit is unknown", [[0, 50], [10.001, 50]], [0, 0, 0, 10.001]],
  ["a gap in the middle", [[0, 50], [5, 50], [30, 50], [32, 50]], [70, 7, 7, 25]],
  ["two gaps add up", [[0, 50], [11, 50], [23, 50]], [0, 0, 0, 23]],
];

describe("edges, floor 60, limit 10 min", () => {
  it.each(CASES)("%s", (_name, samples, [doseMmHgMin, belowMin, knownMin, unknownMin]) => {
    const sums = dose(samples, 60);
    expect(sums.doseMmHgMin).toBeCloseTo(doseMmHgMin, 9);
    expect(sums.belowMin).toBeCloseTo(belowMin, 9);
    expect(sums.knownMin).toBeCloseTo(knownMin, 9);
    expect(sums.unknownMin).toBeCloseTo(unknownMin, 9);
  });
});

describe("what stands out", () => {
  it("has nothing to show without readings", () => {
    expect(dose([], 60)).toEqual({
      doseMmHgMin: 0,
      belowMin: 0,
      knownMin: 0,
      unknownMin: 0,
      readings: 0,
      readingsBelow: 0,
      anyBelow: false,
    });
  });
  it("a single low reading has no dose and is not forgotten", () => {
    const [low] = readingsOf([[3, 59]]);
    expect(dose([[3, 59]], 60)).toEqual({
      doseMmHgMin: 0,
      belowMin: 0,
      knownMin: 0,
      unknownMin: 0,
      readings: 1,
      readingsBelow: 1,
      anyBelow: true,
      firstBelow: low,
      lowest: low,
      last: low,
    });
  });
  it("a reading at the floor is not below", () => {
    const sums = dose([[3, 60]], 60);
    expect([sums.readings, sums.readingsBelow, sums.anyBelow, sums.firstBelow]).toEqual([1, 0, false, undefined]);
    expect(sums.lowest).toEqual({ atMs: 3 * MIN_MS, mmHg: 60 });
  });
  it("keeps the first low, the first of the lowest, and the last", () => {
    const samples: Samples = [
      [0, 70],
      [1, 58],
      [2, 45],
      [3, 50],
      [4, 45],
      [5, 65],
    ];
    const series = readingsOf(samples);
    const sums = dose(samples, 60);
    expect([sums.readings, sums.readingsBelow]).toEqual([6, 4]);
    expect(sums.firstBelow).toEqual(series[1]);
    expect(sums.lowest).toEqual(series[2]);
    expect(sums.last).toEqual(series[5]);
  });
});

describe("two readings at one instant", () => {
  it("the line comes in to the first and goes on from the second", () => {
    // 60 → 50 over 2 min is 10 mmHg·min; then nothing happens in no time; 60 → 60 over 3 min adds none.
    const sums = dose(
      [
        [0, 60],
        [2, 50],
        [2, 60],
        [5, 60],
      ],
      60,
    );
    expect([sums.doseMmHgMin, sums.belowMin, sums.knownMin, sums.unknownMin]).toEqual([10, 2, 5, 0]);
  });
  it("both count as readings, and a low one is an event", () => {
    const sums = dose(
      [
        [2, 50],
        [2, 70],
      ],
      60,
    );
    expect([sums.doseMmHgMin, sums.readings, sums.readingsBelow, sums.anyBelow]).toEqual([0, 2, 1, true]);
    expect(sums.last).toEqual({ atMs: 2 * MIN_MS, mmHg: 70 });
  });
});

const at = (atMs: number, mmHg = 50): PressureReading => ({ atMs, mmHg: mmHgOf(mmHg) });
const FURTHEST_MS = 8.64e15;

describe("what it refuses", () => {
  it("a reading older than the last", () => {
    const sum = taken(addReading(startLowPressure(mmHgOf(60), LIMIT_MS), at(1_000)));
    expect(addReading(sum, at(999))).toEqual({
      ok: false,
      error: { kind: "not-in-order", atMs: 999, lastAtMs: 1_000 },
    });
    expect(addReading(sum, at(1_000)).ok).toBe(true);
  });
  it.each([Number.NaN, Infinity, -Infinity, FURTHEST_MS + 2, -FURTHEST_MS - 2])("%d is not a time", (atMs) => {
    const refused = { ok: false, error: { kind: "not-a-time", atMs } };
    expect(addReading(startLowPressure(mmHgOf(60), LIMIT_MS), at(atMs))).toEqual(refused);
    expect(lowPressureDose([at(0), at(atMs)], mmHgOf(60), LIMIT_MS)).toEqual(refused);
  });
  it.each([FURTHEST_MS, -FURTHEST_MS, 0])("%d is one", (atMs) => {
    expect(addReading(startLowPressure(mmHgOf(60), LIMIT_MS), at(atMs)).ok).toBe(true);
  });
  it("the first fault of a series, not a later one", () => {
    expect(lowPressureDose([at(5), at(4), at(Number.NaN)], mmHgOf(60), LIMIT_MS)).toEqual({
      ok: false,
      error: { kind: "not-in-order", atMs: 4, lastAtMs: 5 },
    });
  });
  it("to know a gap while the limit is not a number", () => {
    const sums = dose(
      [
        [0, 50],
        [1, 50],
      ],
      60,
      Number.NaN,
    );
    expect([sums.doseMmHgMin, sums.knownMin, sums.unknownMin]).toEqual([0, 0, 1]);
  });
});

describe("one reading at a time", () => {
  it("leaves the old sum as it was", () => {
    const before = taken(addReading(startLowPressure(mmHgOf(60), LIMIT_MS), at(0)));
    const copy = structuredClone(before);
    addReading(Object.freeze(before), at(MIN_MS));
    expect(before).toEqual(copy);
  });
  it("does not grow with the case", () => {
    const sums: LowPressure[] = [startLowPressure(mmHgOf(60), LIMIT_MS)];
    for (let i = 0; i < 2_000; i++) sums.push(taken(addReading(sums[i]!, at(i * MIN_MS, 40 + (i % 50)))));
    const fields = (sum: LowPressure | undefined) => Object.keys(sum ?? {}).sort();
    expect(fields(sums[2_000])).toEqual(fields(sums[1]));
    expect(lowPressureTotals(sums[2_000]!).readings).toBe(2_000);
  });
});
