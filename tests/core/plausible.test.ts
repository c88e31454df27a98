import { describe, expect, it } from "vitest";
import { mmHg } from "../../src/core/mmHg.ts";
import { pressureOrder, withinLimits, type Pressures } from "../../src/core/plausible.ts";
import { VITALS, type VitalCode } from "../../src/core/vitals.ts";

describe("entry limits include their ends and nothing beyond", () => {
  it.each(Object.keys(VITALS) as VitalCode[])("%s", (code) => {
    const { min, max } = VITALS[code].limits;
    const tried = [min, max, min - 0.1, max + 0.1, Number.NaN].map((value) => withinLimits(code, value));
    expect(tried).toEqual([true, true, false, false, false]);
  });
});

it("no diastolic in the teens is taken as heard: sixteen is sixty misheard", () => {
  const teens = [13, 14, 15, 16, 17, 18, 19];
  expect(teens.filter((value) => withinLimits("dbp", value))).toEqual([]);
});

const ORDERS: readonly [Pressures, boolean][] = [
  [{ sbp: 120, dbp: 60 }, true],
  [{ sbp: 60, dbp: 120 }, false],
  [{ sbp: 90, dbp: 90 }, false],
  [{ sbp: 120, dbp: 60, map: 84 }, true],
  [{ sbp: 120, dbp: 60, map: 130 }, false],
  [{ sbp: 120, dbp: 60, map: 55 }, false],
  [{ sbp: 120, map: 120 }, false],
  [{ dbp: 60, map: 70 }, true],
  [{ sbp: 120, dbp: undefined, map: undefined }, true],
  [{}, true],
];

describe("diastolic under mean under systolic", () => {
  it.each(ORDERS)("%j: %s", (pressures, expected) => expect(pressureOrder(pressures)).toBe(expected));
});

it("the checked door into mmHg says why it refuses", () => {
  expect(mmHg(58)).toEqual({ ok: true, value: 58 });
  expect(mmHg(301)).toEqual({ ok: false, error: { kind: "out-of-range", min: 0, max: 300 } });
  expect(mmHg(Number.NaN)).toEqual({ ok: false, error: { kind: "not-a-number" } });
});
