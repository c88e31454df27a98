import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Kg, Years } from "../../src/core/quantity.ts";
import { adultTube, childTube, type AdultTubeRules, type ChildTubeRules } from "../../src/core/tubes.ts";

const RULES: ChildTubeRules = {
  childCuffedPlusMm: 3.5,
  childUncuffedPlusMm: 4,
  childDepthPlusCm: 12,
  infantMm: 3,
  infantFromKg: 3.5,
  oneYearOldMm: 3.5,
  spareStepMm: 0.5,
};
const ADULT: AdultTubeRules = {
  female: { sizeMm: { low: 7, high: 7.5 }, depthCm: 21 },
  male: { sizeMm: { low: 7.5, high: 8 }, depthCm: 23 },
  spareStepMm: 0.5,
};
const child = (ageA: number, weightKg?: number) => ({
  ageA: ageA as Years,
  ...(weightKg === undefined ? {} : { weightKg: weightKg as Kg }),
});
const refused = (mm: number) => ({ ok: false, error: { kind: "no-such-tube", mm } });

describe("a child from the second birthday on", () => {
  it("at six years: 5.0 cuffed, 5.5 uncuffed, 4.5 and 5.5 spare, 15 cm by either rule", () => {
    expect(childTube(child(6), RULES)).toEqual({
      ok: true,
      value: {
        cuffedMm: 5,
        sparesMm: [4.5, 5.5],
        depthBySizeCm: 15,
        byAge: { uncuffedMm: 5.5, depthCm: 15 },
      },
    });
  });
  it("at six years under the other rule that is taught: 4.5 cuffed, 16 cm by age", () => {
    expect(childTube(child(6), { ...RULES, childCuffedPlusMm: 3, childDepthPlusCm: 13 })).toMatchObject({
      value: { cuffedMm: 4.5, byAge: { depthCm: 16 } },
    });
  });
  it("halfway between two sizes the smaller one, cuffed or not", () => {
    expect(childTube(child(3), RULES)).toMatchObject({
      value: { cuffedMm: 4, byAge: { uncuffedMm: 4.5, depthCm: 13.5 } },
    });
  });
  it("begins at two", () => {
    expect(childTube(child(2), RULES)).toMatchObject({
      value: { cuffedMm: 4, byAge: { uncuffedMm: 4.5, depthCm: 13 } },
    });
  });
  it("weight plays no part", () => expect(childTube(child(6, 2), RULES)).toEqual(childTube(child(6), RULES)));
  it("an age that leads to no tube is refused, cuffed first", () => {
    expect(childTube(child(29), RULES)).toEqual(refused(10.75));
    expect(childTube(child(28), { ...RULES, childUncuffedPlusMm: 0 })).toEqual(refused(10.5));
    expect(childTube(child(26), RULES)).toEqual(refused(10.5));
  });
});

describe("under two years the sizes are the protocol's, cuffed alone", () => {
  const oneYearOld = { ok: true, value: { cuffedMm: 3.5, sparesMm: [3, 4], depthBySizeCm: 10.5 } };
  const infant = { ok: true, value: { cuffedMm: 3, sparesMm: [2.5, 3.5], depthBySizeCm: 9, onlyFromKg: 3.5 } };
  it.each([1, 1.5, 1.99])("%d years", (age) => expect(childTube(child(age), RULES)).toEqual(oneYearOld));
  it.each([0, 0.5, 0.99])("%d years, and from which weight on it holds", (age) => {
    expect(childTube(child(age), RULES)).toEqual(infant);
    expect(childTube(child(age, 3.5), RULES)).toEqual(infant);
  });
  it("an infant known to be lighter has none", () => {
    expect(childTube(child(0, 3.4), RULES)).toEqual({ ok: false, error: { kind: "below-infant-weight", fromKg: 3.5 } });
  });
  it("a light one-year-old has one", () => expect(childTube(child(1, 3.4), RULES)).toEqual(oneYearOld));
  it("a size that is not made is refused", () => {
    expect(childTube(child(0.5), { ...RULES, infantMm: 1 })).toEqual(refused(1));
    expect(childTube(child(1), { ...RULES, oneYearOldMm: 11 })).toEqual(refused(11));
  });
});

describe("an adult", () => {
  it("a woman", () => {
    expect(adultTube("female", ADULT)).toEqual({
      ok: true,
      value: { sizeMm: { low: 7, high: 7.5 }, sparesMm: [6.5, 8], depthCm: 21 },
    });
  });
  it("a man", () => {
    expect(adultTube("male", ADULT)).toEqual({
      ok: true,
      value: { sizeMm: { low: 7.5, high: 8 }, sparesMm: [7, 8.5], depthCm: 23 },
    });
  });
  it("a size that is not made is refused", () => {
    const sized = (low: number, high: number): AdultTubeRules => ({
      ...ADULT,
      male: { sizeMm: { low, high }, depthCm: 23 },
    });
    expect(adultTube("male", sized(1, 8))).toEqual(refused(1));
    expect(adultTube("male", sized(8, 12))).toEqual(refused(12));
  });
});

describe("properties", () => {
  it("an older child never has a smaller tube, and every size is one that is made", () => {
    const age = fc.double({ min: 0, max: 18, noNaN: true });
    fc.assert(
      fc.property(age, age, (a, b) => {
        const sizes = [Math.min(a, b), Math.max(a, b)].map((n) => childTube(child(n), RULES));
        const [younger, older] = sizes.map((s) => (s.ok ? s.value : undefined));
        if (younger === undefined || older === undefined) throw new Error("a child without a tube");
        expect(younger.cuffedMm).toBeLessThanOrEqual(older.cuffedMm);
        for (const size of [younger.cuffedMm, ...younger.sparesMm, older.byAge?.uncuffedMm ?? 2])
          expect(Number.isInteger(size * 2)).toBe(true);
      }),
    );
  });
});
