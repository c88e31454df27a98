import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkedMmHg as mm } from "../../src/core/mmHg.ts";
import { perMin, years } from "../../src/core/quantities.ts";
import { ageShockIndex, modifiedShockIndex, shockIndex } from "../../src/core/shockIndex.ts";
import { checkRows } from "../tables/checkRows.ts";
import { AGE_ROWS, MODIFIED_ROWS, SHOCK_INDEX_ROWS } from "../tables/shockIndex.ts";
import { taken } from "./taken.ts";

const rate = (n: number) => taken(perMin(n));

checkRows("shock index", SHOCK_INDEX_ROWS, ({ hr, sbp }) => taken(shockIndex(rate(hr), mm(sbp))));
checkRows("modified shock index", MODIFIED_ROWS, ({ hr, map }) => taken(modifiedShockIndex(rate(hr), mm(map))));
checkRows("age shock index", AGE_ROWS, ({ age, hr, sbp }) =>
  ageShockIndex(taken(years(age)), taken(shockIndex(rate(hr), mm(sbp)))),
);

describe("a pressure that may not be recorded has no index", () => {
  it("systolic", () => {
    const refused = { ok: false, error: { kind: "out-of-range", min: 30, max: 300 } };
    expect(shockIndex(rate(60), mm(30))).toEqual({ ok: true, value: 2 });
    for (const sbp of [29.9, 0, 300.1]) expect(shockIndex(rate(60), mm(sbp))).toEqual(refused);
  });
  it("mean", () => {
    const refused = { ok: false, error: { kind: "out-of-range", min: 20, max: 250 } };
    expect(modifiedShockIndex(rate(60), mm(20))).toEqual({ ok: true, value: 3 });
    for (const map of [19.9, 0, 250.1]) expect(modifiedShockIndex(rate(60), mm(map))).toEqual(refused);
  });
});

const hr = fc.integer({ min: 2, max: 260 }).map(rate);
const any = fc.double({ min: 0, max: 300, noNaN: true }).map(mm);

describe("properties", () => {
  it("an index is a finite number over zero, or refused", () => {
    fc.assert(
      fc.property(hr, any, fc.integer({ min: 0, max: 110 }), (rateNow, pressure, age) => {
        const index = shockIndex(rateNow, pressure);
        const modified = modifiedShockIndex(rateNow, pressure);
        for (const found of [index, modified])
          if (found.ok) expect(found.value > 0 && Number.isFinite(found.value)).toBe(true);
        if (index.ok) expect(Number.isFinite(ageShockIndex(taken(years(age)), index.value))).toBe(true);
      }),
    );
  });
  it("rises with the rate, falls with the pressure, and gives the rate back", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 259 }), fc.integer({ min: 30, max: 299 }), (n, sbp) => {
        const index = taken(shockIndex(rate(n), mm(sbp)));
        expect(taken(shockIndex(rate(n + 1), mm(sbp)))).toBeGreaterThan(index);
        expect(taken(shockIndex(rate(n), mm(sbp + 1)))).toBeLessThan(index);
        expect(index * sbp).toBeCloseTo(n, 9);
      }),
    );
  });
});
