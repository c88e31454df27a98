import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { meanArterialPressureWithRate, meanDisagreement } from "../../src/core/meanPressure.ts";
import { checkedMmHg as mm } from "../../src/core/mmHg.ts";
import { meanArterialPressure } from "../../src/core/pressure.ts";
import type { PerMin } from "../../src/core/quantity.ts";
import { perMin } from "../../src/core/quantities.ts";
import { checkRows } from "../tables/checkRows.ts";
import { MEAN_WITH_RATE_ROWS } from "../tables/pressures.ts";
import { taken } from "./taken.ts";

const rate = (n: number): PerMin => taken(perMin(n));

checkRows("mean pressure with heart rate", MEAN_WITH_RATE_ROWS, ({ sbp, dbp, hr }) =>
  meanArterialPressureWithRate(mm(sbp), mm(dbp), rate(hr)),
);

describe("a measured mean beside a computed one", () => {
  const computed = meanArterialPressure(mm(120), mm(60));
  const limit = mm(10);
  const ROWS: readonly [measured: number, by: number, exceeds: boolean][] = [
    [84, -4, false],
    [80, 0, false],
    [90, -10, false],
    [70, 10, false],
    [90.1, -10.1, true],
    [69.9, 10.1, true],
    [95, -15, true],
    [65, 15, true],
  ];
  it.each(ROWS)("measured %d with 120/60: %d apart, too far: %s", (measured, by, exceeds) => {
    const found = meanDisagreement(mm(measured), computed, limit);
    expect(found.byMmHg).toBeCloseTo(by, 9);
    expect(found.exceeds).toBe(exceeds);
  });
});

const dbpMmHg = fc.integer({ min: 20, max: 200 });
const above = fc.integer({ min: 1, max: 100 });
const hr = fc.integer({ min: 2, max: 260 });

describe("properties", () => {
  it("the mean with rate lies between diastolic and systolic, and rises with the rate", () => {
    fc.assert(
      fc.property(dbpMmHg, above, hr, (dbp, pulse, n) => {
        const mean = meanArterialPressureWithRate(mm(dbp + pulse), mm(dbp), rate(n));
        expect(mean).toBeGreaterThan(dbp);
        expect(mean).toBeLessThan(dbp + pulse);
        if (n < 260) expect(meanArterialPressureWithRate(mm(dbp + pulse), mm(dbp), rate(n + 1))).toBeGreaterThan(mean);
      }),
    );
  });
  it("measured and computed change places: the sign turns, the verdict stays", () => {
    fc.assert(
      fc.property(dbpMmHg, dbpMmHg, fc.integer({ min: 0, max: 30 }), (a, b, limit) => {
        const one = meanDisagreement(mm(a), mm(b), mm(limit));
        const other = meanDisagreement(mm(b), mm(a), mm(limit));
        expect(one.byMmHg + other.byMmHg).toBe(0);
        expect(one.exceeds).toBe(other.exceeds);
        expect(a + one.byMmHg).toBe(b);
      }),
    );
  });
});
