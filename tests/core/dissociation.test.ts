import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { po2AtSaturation, saturationAtPo2 } from "../../src/core/dissociation.ts";
import { checkedMmHg } from "../../src/core/mmHg.ts";
import { fraction } from "../../src/core/quantities.ts";
import { checkRows } from "../tables/checkRows.ts";
import { PO2_ROWS, SATURATION_ROWS, STANDARD_CURVE } from "../tables/oxygen.ts";
import { taken } from "./taken.ts";

/** The error that equation 1 is stated to have. */
const STATED = 0.0055;

const saturation = (po2: number): number => saturationAtPo2(checkedMmHg(po2));
const po2 = (s: number): number => taken(po2AtSaturation(taken(fraction(s))));

/** Equation 1 undone by halving, which knows nothing of either formula for the inverse. */
function rootOfEquation1(s: number): number {
  let [low, high] = [0, 1000];
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (saturation(middle) < s) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

checkRows("saturation, %, from oxygen pressure", SATURATION_ROWS, (given) => 100 * saturation(given));
checkRows("oxygen pressure from saturation", PO2_ROWS, po2);

describe(`the standard curve [${STANDARD_CURVE.source.read}]`, () => {
  it.each(STANDARD_CURVE.points)("$po2 mmHg is $saturationPct % within the stated error", (point) => {
    expect(Math.abs(saturation(point.po2) - point.saturationPct / 100)).toBeLessThanOrEqual(STATED);
  });
  // The reason for choosing equation 2 over an exact inverse of equation 1.
  it.each(STANDARD_CURVE.points.filter(({ saturationPct: s }) => s > 90 && s < 96))(
    "at $saturationPct % the published inverse is closer to it than the exact one",
    (point) => {
      const s = point.saturationPct / 100;
      const published = Math.abs(po2(s) - point.po2);
      expect(published).toBeLessThan(0.2);
      expect(published).toBeLessThan(Math.abs(rootOfEquation1(s) - point.po2) / 3);
    },
  );
});

describe("ends", () => {
  it.each([0, -0, -5, -27])("a pressure of %s mmHg binds nothing", (n) => expect(saturation(n)).toBe(0));
  it.each([0, 0.2999, 0.9901, 1])("a saturation of %s has no pressure to give", (s) => {
    expect(po2AtSaturation(taken(fraction(s)))).toEqual({
      ok: false,
      error: { kind: "outside-fit", min: 0.3, max: 0.99 },
    });
  });
  it("both ends of the fit are inside", () => {
    expect(po2(0.3)).toBeCloseTo(19.056, 3);
    expect(po2(0.99)).toBeCloseTo(136.325, 3);
  });
});

describe("how far the published inverse is from root finding, 0.30 to 0.99", () => {
  const steps = Array.from({ length: 691 }, (_, i) => (300 + i) / 1000);

  it("in saturation, never more than the error stated for the curve itself", () => {
    const worst = Math.max(...steps.map((s) => Math.abs(saturation(po2(s)) - s)));
    expect(worst).toBeLessThanOrEqual(STATED);
    expect(worst).toBeCloseTo(0.0053, 4);
  });
  it("in pressure, at most 1.0 mmHg up to 0.97 and 4.4 at 0.99", () => {
    const apart = (s: number): number => Math.abs(po2(s) - rootOfEquation1(s));
    expect(Math.max(...steps.filter((s) => s <= 0.97).map(apart))).toBeCloseTo(0.96, 2);
    expect(Math.max(...steps.map(apart))).toBeCloseTo(4.39, 2);
  });
});

describe("properties", () => {
  const pressure = fc.double({ min: 0, max: 800, noNaN: true });
  const fitted = fc.double({ min: 0.3, max: 0.99, noNaN: true });

  it("saturation is a fraction that rises with pressure", () => {
    fc.assert(
      fc.property(pressure, fc.double({ min: 0.01, max: 100, noNaN: true }), (p, more) => {
        expect(saturation(p)).toBeGreaterThanOrEqual(0);
        expect(saturation(p + more)).toBeGreaterThan(saturation(p));
        expect(saturation(p + more)).toBeLessThan(1);
      }),
    );
  });
  it("pressure rises with saturation", () => {
    fc.assert(
      fc.property(fitted, fitted, (a, b) => {
        fc.pre(Math.abs(a - b) > 1e-9);
        expect(po2(Math.max(a, b))).toBeGreaterThan(po2(Math.min(a, b)));
      }),
    );
  });
  it("every fraction has a finite pressure or a refusal", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (s) => {
        const result = po2AtSaturation(taken(fraction(s)));
        expect(result.ok).toBe(s >= 0.3 && s <= 0.99);
        if (result.ok) expect(result.value).toBeGreaterThan(0);
      }),
    );
  });
});
