import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { drawUp, roundToSyringe, SYRINGES, type Syringe } from "../../src/core/drawUpSyringe.ts";
import { ml } from "../../src/core/quantities.ts";
import { anyAmount, anyConcentration, anyMl, some, strong } from "./doseArbitraries.ts";
import { taken } from "./taken.ts";

const vol = (n: number) => taken(ml(n));

/** Volume wanted, syringe, volume drawn. By hand. */
const ROWS: readonly [number, number, number][] = [
  [0.01, 1, 0.01],
  [0.1, 1, 0.1],
  [0.154, 1, 0.15],
  [0.156, 1, 0.16],
  [0.996, 1, 1],
  [1, 1, 1],
  [1.01, 3, 1],
  [2.44, 3, 2.4],
  [2.46, 3, 2.5],
  [3, 3, 3],
  [3.01, 5, 3],
  [3.75, 5, 3.8],
  [5, 5, 5],
  [5.11, 10, 5.2],
  [8.796, 10, 8.8],
  [10, 10, 10],
  [10.01, 20, 10],
  [12.6, 20, 13],
  [20, 20, 20],
  [20.4, 50, 20],
  [45, 50, 45],
  [50, 50, 50],
];

describe("to the nearest line of the smallest syringe", () => {
  it.each(ROWS)("%d mL: of %d mL, to %d", (wanted, sizeMl, drawMl) => {
    const drawable = taken(roundToSyringe(vol(wanted)));
    expect(drawable).toMatchObject({ sizeMl, drawMl });
    expect(drawable.differencePct).toBeCloseTo((100 * (drawMl - wanted)) / wanted, 9);
  });
  it("noise of doubles does not ask for a larger syringe", () => {
    expect(taken(roundToSyringe(vol(10.000000000000002)))).toMatchObject({ sizeMl: 10, drawMl: 10 });
  });
  it("refuses rather than draw nothing", () => {
    for (const volumeMl of [0, 0.0049]) {
      expect(roundToSyringe(vol(volumeMl))).toEqual({
        ok: false,
        error: { kind: "too-small-to-draw", volumeMl, smallestMl: 0.01 },
      });
    }
    expect(taken(roundToSyringe(vol(0.0051))).drawMl).toBe(0.01);
  });
  it("refuses what no syringe holds", () => {
    expect(roundToSyringe(vol(50.1))).toEqual({
      ok: false,
      error: { kind: "too-large-to-draw", volumeMl: 50.1, largestMl: 50 },
    });
    expect(roundToSyringe(vol(1), undefined, [])).toEqual({
      ok: false,
      error: { kind: "too-large-to-draw", volumeMl: 1, largestMl: 0 },
    });
  });
  it("takes the syringes that there are", () => {
    const coarse: readonly Syringe[] = [{ sizeMl: 10, divisionsPerMl: 2 }];
    expect(taken(roundToSyringe(vol(1.3), undefined, coarse))).toMatchObject({ sizeMl: 10, drawMl: 1.5 });
    expect(roundToSyringe(vol(0.2), undefined, coarse)).toMatchObject({ error: { smallestMl: 0.5 } });
  });
  it("every syringe of the table holds a whole number of lines, and they grow", () => {
    for (const { sizeMl, divisionsPerMl } of SYRINGES) expect(Number.isInteger(sizeMl * divisionsPerMl)).toBe(true);
    const sizes = SYRINGES.map(({ sizeMl }) => sizeMl);
    expect(sizes.toSorted((a, b) => a - b)).toEqual(sizes);
  });
});

describe("never over a ceiling", () => {
  it("draws the line below where the nearest is over it", () => {
    expect(taken(roundToSyringe(vol(2.47), vol(2.48))).drawMl).toBe(2.4);
    expect(taken(roundToSyringe(vol(2.47), vol(2.5))).drawMl).toBe(2.5);
    expect(taken(roundToSyringe(vol(2.42), vol(2.43))).drawMl).toBe(2.4);
  });
  it.each([
    [0.5, 1],
    [0.5, 0.501],
    [2.4, 10],
    [8.8, 9],
    [44, 100],
  ])("a ceiling that is not reached changes nothing: %d mL under %d", (volume, ceiling) => {
    expect(roundToSyringe(vol(volume), vol(ceiling))).toEqual(roundToSyringe(vol(volume)));
  });
  it("a ceiling that is a line up to the noise of doubles is that line", () => {
    expect(taken(roundToSyringe(vol(6), vol(5.999999999999999))).drawMl).toBe(6);
    expect(taken(roundToSyringe(vol(2.4), vol(2.3999999999999995))).drawMl).toBe(2.4);
    expect(taken(roundToSyringe(vol(2.46), vol(2.3999999999999995))).drawMl).toBe(2.4);
  });
  it("refuses where there is no line below", () => {
    expect(roundToSyringe(vol(0.008), vol(0.009))).toMatchObject({ ok: false, error: { kind: "too-small-to-draw" } });
  });
});

describe("a dose as it can be drawn up", () => {
  it("rocuronium 87.96 mg at 10 mg/mL: 8.8 mL in a 10 mL syringe, which gives 88 mg", () => {
    const drawn = taken(drawUp(some(87.96, "mg"), strong(10, "mg")));
    expect(drawn).toMatchObject({ sizeMl: 10, drawMl: 8.8, dose: { value: 88, unit: "mg" } });
    expect(drawn.differencePct).toBeCloseTo(0.0455, 4);
  });
  it("says the dose in the unit it was asked in", () => {
    const drawn = taken(drawUp(some(15, "mcg"), strong(0.1, "mg", 10)));
    expect(drawn).toMatchObject({ sizeMl: 3, drawMl: 1.5, dose: { unit: "mcg" } });
    expect(drawn.dose.value).toBeCloseTo(15, 12);
  });
  it("at the cap draws the cap", () => {
    expect(taken(drawUp(some(4500, "mg"), strong(100, "mg"), { cap: some(4.5, "g") })).drawMl).toBe(45);
  });
  it("does not round over the cap, but does without one", () => {
    const dose = some(124, "mg");
    expect(taken(drawUp(dose, strong(50, "mg"), { cap: some(124, "mg") })).dose.value).toBe(120);
    expect(taken(drawUp(dose, strong(50, "mg"), { cap: some(126, "mg") })).dose.value).toBe(125);
    expect(taken(drawUp(dose, strong(50, "mg"))).dose.value).toBe(125);
  });
  it("refuses a dose that is over the cap itself", () => {
    expect(drawUp(some(201, "mg"), strong(50, "mg"), { cap: some(0.2, "g") })).toEqual({
      ok: false,
      error: { kind: "over-cap", cap: some(200, "mg") },
    });
  });
  it("with other syringes", () => {
    const syringes: readonly Syringe[] = [{ sizeMl: 10, divisionsPerMl: 2 }];
    expect(taken(drawUp(some(65, "mg"), strong(50, "mg"), { syringes })).drawMl).toBe(1.5);
  });
  it("passes every refusal on", () => {
    const mismatch = (from: string, to: string) => ({ ok: false, error: { kind: "unit-mismatch", from, to } });
    expect(drawUp(some(5, "units"), strong(50, "mg"))).toEqual(mismatch("units", "mg"));
    expect(drawUp(some(5, "mg"), strong(50, "mg"), { cap: some(5, "mL") })).toEqual(mismatch("mL", "mg"));
    expect(drawUp(some(1, "mcg"), strong(1, "mg"))).toMatchObject({ error: { kind: "too-small-to-draw" } });
    expect(drawUp(some(5, "g"), strong(50, "mg"))).toMatchObject({ error: { kind: "too-large-to-draw" } });
    expect(drawUp(some(0.001, "mcg"), strong(0.001, "mcg", 1.04))).toMatchObject({ error: { kind: "out-of-range" } });
  });
});

describe("properties", () => {
  it("draws something that the syringe can show, at most half a line off", () => {
    fc.assert(
      fc.property(anyMl, (volumeMl) => {
        const drawable = roundToSyringe(volumeMl);
        if (!drawable.ok) {
          expect(volumeMl < 0.005 || volumeMl > 50).toBe(true);
          return;
        }
        const { sizeMl, drawMl } = drawable.value;
        const lines = SYRINGES.find((syringe) => syringe.sizeMl === sizeMl)!.divisionsPerMl;
        expect(Math.abs(drawMl * lines - Math.round(drawMl * lines))).toBeLessThan(1e-9);
        expect(drawMl > 0 && drawMl <= sizeMl).toBe(true);
        expect(Math.abs(drawMl - volumeMl)).toBeLessThanOrEqual(0.5 / lines + 1e-9);
      }),
    );
  });
  it("never gives more than the cap, never nothing, whatever is asked", () => {
    fc.assert(
      fc.property(anyAmount, anyConcentration, fc.double({ min: 0.5, max: 2, noNaN: true }), (dose, of, times) => {
        const cap = { ...dose, value: (dose.value * times) as typeof dose.value };
        const drawn = drawUp(dose, of, { cap });
        if (!drawn.ok) return;
        expect(drawn.value.dose.unit).toBe(dose.unit);
        expect(drawn.value.dose.value).toBeLessThanOrEqual(cap.value * (1 + 2e-9));
        expect(drawn.value.drawMl > 0 && drawn.value.dose.value > 0).toBe(true);
        expect(Number.isFinite(drawn.value.differencePct)).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });
});
