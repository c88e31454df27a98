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
import { checkRows } from "../tables/checkRows.ts";
import {
  CPP_ROWS,
  DEFICIT_ROWS,
  ICP_BOUND_ROWS,
  MAP_FOR_CPP_ROWS,
  MEAN_ROWS,
  PULSE_PRESSURE_ROWS,
} from "../tables/pressures.ts";

checkRows("mean pressure", MEAN_ROWS, ({ sbp, dbp }) => meanArterialPressure(mm(sbp), mm(dbp)));
checkRows("pulse pressure", PULSE_PRESSURE_ROWS, ({ sbp, dbp }) => pulsePressure(mm(sbp), mm(dbp)));
checkRows("perfusion pressure", CPP_ROWS, ({ map, icp }) => cerebralPerfusionPressure(mm(map), mm(icp)));
checkRows("mean that a target needs", MAP_FOR_CPP_ROWS, ({ target, icp }) => mapForCpp(mm(target), mm(icp)));
checkRows("bound on ICP", ICP_BOUND_ROWS, ({ map, target }) => icpAtWhichCppMeets(mm(map), mm(target)));
checkRows("deficit", DEFICIT_ROWS, ({ value, target }) => deficit(value, target));

describe("room left above target", () => {
  it("MAP 95 may fall by 5 before it leaves 90", () => expect(perfusionMargin(mm(95), mm(90))).toBe(5));
  it("a measured CPP can leave less room", () => {
    expect(perfusionMargin(mm(95), mm(90), { cppMmHg: mm(62), targetMmHg: mm(60) })).toBe(2);
  });
  it("or more, which the mean does not have", () => {
    expect(perfusionMargin(mm(95), mm(90), { cppMmHg: mm(85), targetMmHg: mm(60) })).toBe(5);
  });
  it("no room is left with CPP below target", () => {
    expect(perfusionMargin(mm(95), mm(90), { cppMmHg: mm(55), targetMmHg: mm(60) })).toBe(0);
  });
  it("nor with the mean below target", () => expect(perfusionMargin(mm(85), mm(90))).toBe(0));
});

const pressure = fc.integer({ min: 20, max: 250 }).map(mm);
const anyPressure = fc.double({ min: 0, max: 300, noNaN: true }).map(mm);

describe("properties", () => {
  it("the mean lies between diastolic and systolic, nearer to the diastolic", () => {
    fc.assert(
      fc.property(pressure, fc.integer({ min: 1, max: 150 }), (dbp, above) => {
        const mean = meanArterialPressure(mm(dbp + above), dbp);
        expect(mean).toBeGreaterThan(dbp);
        expect(mean).toBeLessThan(dbp + above / 2);
      }),
    );
  });
  it("one mmHg less of mean is one less of perfusion; one more of ICP as well", () => {
    fc.assert(
      fc.property(pressure, pressure, (map, icp) => {
        const cpp = cerebralPerfusionPressure(map, icp);
        expect(cerebralPerfusionPressure(mm(map - 1), icp)).toBe(cpp - 1);
        expect(cerebralPerfusionPressure(map, mm(icp + 1))).toBe(cpp - 1);
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
  it("a value and its deficit together meet the target", () => {
    fc.assert(
      fc.property(pressure, pressure, (value, target) => {
        expect(value + deficit(value, target)).toBe(Math.max(value, target));
      }),
    );
  });
  it("every checked pressure gives a number", () => {
    fc.assert(
      fc.property(anyPressure, anyPressure, (a, b) => {
        const results = [meanArterialPressure, pulsePressure, cerebralPerfusionPressure, mapForCpp, icpAtWhichCppMeets];
        expect(results.map((compute) => compute(a, b)).every(Number.isFinite)).toBe(true);
        expect(Math.min(deficit(a, b), perfusionMargin(a, b), meanArterialPressure(a, b))).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});
