import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lowPressureDose } from "../../src/core/lowPressureDose.ts";
import {
  addReading,
  lowPressureTotals,
  startLowPressure,
  type LowPressureTotals,
  type PressureReading,
} from "../../src/core/lowPressure.ts";
import { mmHgOf, MIN_MS } from "./courseValues.ts";
import { taken } from "./taken.ts";
import { exactLowPressure } from "./exactLowPressure.ts";

const LIMIT_MS = 10 * MIN_MS;
/** Doubles lose this much of a sum of some tens of parts. */
const RELATIVE = 1e-10;

const near = (got: number, expected: number): void =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(RELATIVE * Math.max(1, Math.abs(expected)));

const sumsOf = ({ doseMmHgMin, belowMin, knownMin, unknownMin }: LowPressureTotals) => [
  doseMmHgMin,
  belowMin,
  knownMin,
  unknownMin,
];

function nearSums(got: readonly number[], expected: readonly number[]): void {
  expect(got).toHaveLength(expected.length);
  got.forEach((sum, i) => near(sum, expected[i]!));
}

/** Gaps of every kind: none, short, exactly the limit, one over it, long. */
const gapMs = fc.oneof(
  fc.constantFrom(0, LIMIT_MS, LIMIT_MS + 1),
  fc.integer({ min: 1, max: LIMIT_MS }),
  fc.integer({ min: LIMIT_MS + 1, max: 5 * LIMIT_MS }),
);
const knownGapMs = fc.integer({ min: 0, max: LIMIT_MS });
/** Close around the floors, so that readings at the floor and crossings are common; perfusion may be negative. */
const pressure = fc.oneof(fc.integer({ min: 55, max: 65 }), fc.integer({ min: -40, max: 300 }));
const floor = fc.integer({ min: 58, max: 62 });

const seriesOf = (gap: fc.Arbitrary<number>, minLength = 0): fc.Arbitrary<PressureReading[]> =>
  fc
    .tuple(fc.integer({ min: 0, max: 2e12 }), fc.array(fc.tuple(gap, pressure), { minLength, maxLength: 25 }))
    .map(([startMs, steps]) => {
      let atMs = startMs;
      return steps.map(([ms, mmHg]) => ({ atMs: (atMs += ms), mmHg: mmHgOf(mmHg) }));
    });
const anySeries = seriesOf(gapMs);

const doseOf = (series: readonly PressureReading[], floorMmHg: number, limitMs = LIMIT_MS): LowPressureTotals =>
  taken(lowPressureDose(series, mmHgOf(floorMmHg), limitMs));

describe("against other methods", () => {
  it("whole fractions give the same sums", () => {
    fc.assert(
      fc.property(anySeries, floor, (series, floorMmHg) => {
        const { doseMmHgMin, belowMin, knownMin, unknownMin } = exactLowPressure(series, floorMmHg, LIMIT_MS);
        nearSums(sumsOf(doseOf(series, floorMmHg)), [doseMmHgMin, belowMin, knownMin, unknownMin]);
      }),
    );
  });
  it("a thousand thin slices of each interval come near", () => {
    fc.assert(
      fc.property(seriesOf(knownGapMs, 2), floor, (series, floorMmHg) => {
        const slices = 1_000;
        let dose = 0;
        let bound = 0;
        for (const [i, to] of series.slice(1).entries()) {
          const from = series[i]!;
          const sliceMin = (to.atMs - from.atMs) / slices / MIN_MS;
          for (let k = 0; k < slices; k++) {
            const mmHg = from.mmHg + (to.mmHg - from.mmHg) * ((k + 0.5) / slices);
            dose += Math.max(0, floorMmHg - mmHg) * sliceMin;
          }
          // Only the slice that holds the crossing is wrong, by an eighth of its length times its rise at most.
          bound += (sliceMin * Math.abs(to.mmHg - from.mmHg)) / slices / 8;
        }
        expect(Math.abs(doseOf(series, floorMmHg).doseMmHgMin - dose)).toBeLessThanOrEqual(bound + 1e-6);
      }),
      { numRuns: 50 },
    );
  });
  it("one reading at a time gives the very same, and every part on the way is the sum of that part", () => {
    fc.assert(
      fc.property(anySeries, floor, (series, floorMmHg) => {
        let sum = startLowPressure(mmHgOf(floorMmHg), LIMIT_MS);
        for (const [i, reading] of series.entries()) {
          sum = taken(addReading(sum, reading));
          expect(lowPressureTotals(sum)).toEqual(doseOf(series.slice(0, i + 1), floorMmHg));
        }
      }),
    );
  });
});

describe("what must not matter", () => {
  it("a reading more on the line", () => {
    fc.assert(
      fc.property(
        seriesOf(knownGapMs, 2),
        floor,
        fc.nat(),
        fc.integer({ min: 0, max: 8 }),
        (series, low, n, eighth) => {
          const i = n % (series.length - 1);
          const [from, to] = [series[i]!, series[i + 1]!];
          const part = eighth / 8;
          const between = {
            atMs: from.atMs + (to.atMs - from.atMs) * part,
            mmHg: mmHgOf(from.mmHg + (to.mmHg - from.mmHg) * part),
          };
          const more = [...series.slice(0, i + 1), between, ...series.slice(i + 1)];
          nearSums(sumsOf(doseOf(more, low)), sumsOf(doseOf(series, low)));
        },
      ),
    );
  });
  it("where the series is cut in two, with the reading at the cut in both", () => {
    fc.assert(
      fc.property(seriesOf(gapMs, 1), floor, fc.nat(), (series, low, n) => {
        const cut = n % series.length;
        const head = sumsOf(doseOf(series.slice(0, cut + 1), low));
        const tail = sumsOf(doseOf(series.slice(cut), low));
        nearSums(
          head.map((sum, i) => sum + tail[i]!),
          sumsOf(doseOf(series, low)),
        );
      }),
    );
  });
  it("when it happened", () => {
    fc.assert(
      fc.property(anySeries, floor, fc.integer({ min: -1e12, max: 1e12 }), (series, low, shiftMs) => {
        const shifted = series.map(({ atMs, mmHg }) => ({ atMs: atMs + shiftMs, mmHg }));
        expect(sumsOf(doseOf(shifted, low))).toEqual(sumsOf(doseOf(series, low)));
      }),
    );
  });
});

describe("how it grows", () => {
  it("twice as deep is twice the dose in the same time", () => {
    fc.assert(
      fc.property(anySeries, floor, (series, low) => {
        const deeper = series.map(({ atMs, mmHg }) => ({ atMs, mmHg: mmHgOf(mmHg * 2) }));
        const [dose, ...times] = sumsOf(doseOf(series, low));
        expect(sumsOf(doseOf(deeper, low * 2))).toEqual([dose! * 2, ...times]);
      }),
    );
  });
  it("twice as slow is twice of everything", () => {
    fc.assert(
      fc.property(anySeries, floor, (series, low) => {
        const slower = series.map(({ atMs, mmHg }) => ({ atMs: atMs * 2, mmHg }));
        const doubled = sumsOf(doseOf(series, low)).map((sum) => sum * 2);
        expect(sumsOf(doseOf(slower, low, LIMIT_MS * 2))).toEqual(doubled);
      }),
    );
  });
  it("a higher floor never lowers dose or time below, and never touches what is known", () => {
    fc.assert(
      fc.property(anySeries, floor, fc.integer({ min: 0, max: 40 }), (series, low, up) => {
        const [lower, higher] = [doseOf(series, low), doseOf(series, low + up)];
        expect(higher.doseMmHgMin).toBeGreaterThanOrEqual(lower.doseMmHgMin - 1e-9);
        expect(higher.belowMin).toBeGreaterThanOrEqual(lower.belowMin - 1e-9);
        expect([higher.knownMin, higher.unknownMin]).toEqual([lower.knownMin, lower.unknownMin]);
      }),
    );
  });
  it("never negative, below is part of known, known and unknown make the whole", () => {
    fc.assert(
      fc.property(anySeries, floor, (series, low) => {
        const sums = doseOf(series, low);
        expect(sums.doseMmHgMin).toBeGreaterThanOrEqual(0);
        expect(sums.belowMin).toBeGreaterThanOrEqual(0);
        expect(sums.belowMin).toBeLessThanOrEqual(sums.knownMin);
        near(sums.knownMin + sums.unknownMin, ((series.at(-1)?.atMs ?? 0) - (series[0]?.atMs ?? 0)) / MIN_MS);
        expect(sums.anyBelow).toBe(series.some(({ mmHg }) => mmHg < low));
        if (sums.doseMmHgMin > 0) expect(sums.anyBelow).toBe(true);
        expect(sums.lowest?.mmHg).toBe(series.length === 0 ? undefined : Math.min(...series.map(({ mmHg }) => mmHg)));
      }),
    );
  });
});

it("whatever the numbers, it refuses or gives finite sums", () => {
  const reading = fc.record({ atMs: fc.double(), mmHg: fc.double({ min: -300, max: 300, noNaN: true }).map(mmHgOf) });
  fc.assert(
    fc.property(fc.array(reading), fc.double(), fc.boolean(), (readings, limitMs, sorted) => {
      const series = sorted ? readings.toSorted((a, b) => a.atMs - b.atMs) : readings;
      const result = lowPressureDose(series, mmHgOf(60), limitMs);
      if (!result.ok) return;
      for (const sum of sumsOf(result.value)) expect(Number.isFinite(sum) && sum >= 0).toBe(true);
    }),
  );
});
