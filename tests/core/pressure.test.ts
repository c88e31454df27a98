import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkedMmHg as mm } from "../../src/core/mmHg.ts";
import {
  cerebralPerfusionPressure,
  deficit,
  icpAtWhichCppMeets,
  mapForCpp,
  meanArterialPressure,
  perfusionMargin,
  pulsePressure,
} from "../../src/core/pressure.ts";
import { CPP_ROWS, MEAN_ROWS } from "../tables/pressures.ts";

const halfDigit = (decimals: number): number => 0.5 * 10 ** -decimals + 1e-12;

describe("mean pressure agrees with the rows", () => {
  it.each(MEAN_ROWS)("$given is $expected", ({ given, expected, decimals }) => {
    const mean = meanArterialPressure(mm(given.sbp), mm(given.dbp));
    expect(Math.abs(mean - expected)).toBeLessThanOrEqual(halfDigit(decimals));
  });
});

describe("perfusion pressure agrees with the rows", () => {
  it.each(CPP_ROWS)("$given is $expected", ({ given, expected, decimals }) => {
    const cpp = cerebralPerfusionPressure(mm(given.map), mm(given.icp));
    expect(Math.abs(cpp - expected)).toBeLessThanOrEqual(halfDigit(decimals));
  });
});

describe("single rows, worked by hand", () => {
  it("pulse pressure of 120/60 is 60", () => expect(pulsePressure(mm(120), mm(60))).toBe(60));
  it("CPP 60 at ICP 25 needs MAP 85", () => expect(mapForCpp(mm(60), mm(25))).toBe(85));
  it("at MAP 80, CPP is under 60 if ICP is over 20", () => expect(icpAtWhichCppMeets(mm(80), mm(60))).toBe(20));
  it("at MAP 72, CPP is under 50 if ICP is over 22", () => expect(icpAtWhichCppMeets(mm(72), mm(50))).toBe(22));
  it("58 is 2 under 60", () => expect(deficit(58, 60)).toBe(2));
  it("a met target has no deficit", () => expect(deficit(104, 100)).toBe(0));
  it("MAP 95 may fall by 5 before it leaves 90", () => expect(perfusionMargin(mm(95), mm(90))).toBe(5));
  it("a measured CPP can leave less room", () => {
    expect(perfusionMargin(mm(95), mm(90), { cppMmHg: mm(62), targetMmHg: mm(60) })).toBe(2);
  });
  it("no room is left below target", () => {
    expect(perfusionMargin(mm(95), mm(90), { cppMmHg: mm(55), targetMmHg: mm(60) })).toBe(0);
  });
});

const pressure = fc.integer({ min: 20, max: 250 }).map(mm);

describe("properties", () => {
  it("the mean lies between diastolic and systolic", () => {
    fc.assert(
      fc.property(pressure, fc.integer({ min: 1, max: 150 }), (dbp, above) => {
        const mean = meanArterialPressure(mm(dbp + above), dbp);
        expect(mean).toBeGreaterThan(dbp);
        expect(mean).toBeLessThan(dbp + above);
      }),
    );
  });
  it("the mean that a target needs gives exactly that CPP", () => {
    fc.assert(
      fc.property(pressure, pressure, (target, icp) => {
        expect(cerebralPerfusionPressure(mapForCpp(target, icp), icp)).toBe(target);
      }),
    );
  });
  it("the bound is exact: over it CPP is under target, at it CPP meets target", () => {
    fc.assert(
      fc.property(pressure, pressure, (map, target) => {
        const bound = icpAtWhichCppMeets(map, target);
        expect(cerebralPerfusionPressure(map, bound)).toBe(target);
        expect(cerebralPerfusionPressure(map, mm(bound + 1))).toBeLessThan(target);
      }),
    );
  });
  it("falling by the margin keeps both targets, falling by more does not", () => {
    fc.assert(
      fc.property(pressure, pressure, fc.integer({ min: 0, max: 60 }), pressure, (map, target, icp, cppTarget) => {
        const cpp = { cppMmHg: cerebralPerfusionPressure(map, mm(icp)), targetMmHg: cppTarget };
        const kept = (m: number): boolean => m >= target && m - icp >= cppTarget;
        const margin = perfusionMargin(map, target, cpp);
        if (kept(map)) expect(kept(map - margin)).toBe(true);
        expect(kept(map - margin - 1)).toBe(false);
      }),
    );
  });
});
