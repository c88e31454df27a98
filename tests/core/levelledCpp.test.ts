import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { verticalCm } from "../../src/core/hydrostatic.ts";
import { levelledCpp, type MeanLevel } from "../../src/core/levelledCpp.ts";
import { checkedMmHg as mm } from "../../src/core/mmHg.ts";
import { taken } from "./taken.ts";

const cm = (n: number) => taken(verticalCm(n));
const at = (level: MeanLevel, mapMmHg = 80) => ({ mapMmHg: mm(mapMmHg), level });

describe("perfusion pressure keeps where its mean was zeroed", () => {
  it("at the tragus the levels agree; no second number, whatever the height", () => {
    const expected = { cppMmHg: 58, mapLevel: "tragus", levelsAgree: true };
    expect(levelledCpp(at("tragus"), mm(22))).toEqual(expected);
    expect(levelledCpp(at("tragus"), mm(22), cm(15))).toEqual(expected);
  });

  it.each(["heart", "cuff"] as const)("at the %s they do not, and without a height no more is known", (level) => {
    expect(levelledCpp(at(level), mm(22))).toEqual({ cppMmHg: 58, mapLevel: level, levelsAgree: false });
  });

  it.each(["heart", "cuff"] as const)("at the %s with a height, about 46.3 stands beside 58", (level) => {
    const { aboutAtBrainMmHg, ...measured } = levelledCpp(at(level), mm(22), cm(15));
    expect(measured).toEqual({ cppMmHg: 58, mapLevel: level, levelsAgree: false });
    expect(aboutAtBrainMmHg).toBeCloseTo(46.3, 1);
  });

  it("a head that lies level has a second number, the same one", () => {
    expect(levelledCpp(at("heart"), mm(22), cm(0)).aboutAtBrainMmHg).toBe(58);
  });
});

it("the measured number never depends on the height", () => {
  const level = fc.constantFrom<MeanLevel>("tragus", "heart", "cuff");
  const pressure = fc.integer({ min: 0, max: 250 });
  fc.assert(
    fc.property(level, pressure, pressure, fc.double({ min: -100, max: 100, noNaN: true }), (l, map, icp, height) => {
      const found = levelledCpp(at(l, map), mm(icp), cm(height));
      expect(found.cppMmHg).toBe(map - icp);
      expect(found.aboutAtBrainMmHg === undefined).toBe(found.levelsAgree);
      if (found.aboutAtBrainMmHg !== undefined && height > 0)
        expect(found.aboutAtBrainMmHg).toBeLessThanOrEqual(found.cppMmHg);
    }),
  );
});
