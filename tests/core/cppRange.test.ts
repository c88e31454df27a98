import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cppRange } from "../../src/core/cppRange.ts";
import { checkedMmHg as mm } from "../../src/core/mmHg.ts";
import { cerebralPerfusionPressure, icpAtWhichCppMeets } from "../../src/core/pressure.ts";
import { CPP_RANGE_ROWS } from "../tables/pressures.ts";

describe("perfusion pressure for an assumed ICP, worked by hand", () => {
  it.each(CPP_RANGE_ROWS)("MAP $map, ICP $icp.low to $icp.high", ({ map, icp, cpp }) => {
    expect(cppRange(mm(map), { low: mm(icp.low), high: mm(icp.high) })).toEqual(cpp);
  });
});

const map = fc.integer({ min: 20, max: 250 });
const low = fc.integer({ min: 0, max: 50 });
const wide = fc.integer({ min: 0, max: 50 });

describe("properties", () => {
  it("holds the CPP of every ICP between the two, and is as wide as the assumption", () => {
    fc.assert(
      fc.property(map, low, wide, fc.double({ min: 0, max: 1, noNaN: true }), (m, from, width, part) => {
        const range = cppRange(mm(m), { low: mm(from), high: mm(from + width) });
        const cpp = cerebralPerfusionPressure(mm(m), mm(from + part * width));
        expect(cpp).toBeGreaterThanOrEqual(range.lowMmHg);
        expect(cpp).toBeLessThanOrEqual(range.highMmHg);
        expect(range.highMmHg - range.lowMmHg).toBe(width);
      }),
    );
  });
  it("agrees with the bound: it reaches under target just where the assumption reaches over the bound", () => {
    fc.assert(
      fc.property(map, low, wide, fc.integer({ min: 40, max: 70 }), (m, from, width, target) => {
        const range = cppRange(mm(m), { low: mm(from), high: mm(from + width) });
        const bound = icpAtWhichCppMeets(mm(m), mm(target));
        expect(range.lowMmHg < target).toBe(from + width > bound);
        expect(range.highMmHg < target).toBe(from > bound);
      }),
    );
  });
});
