import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formulaHeight, idealWeight, predictedWeight, type FormulaCm } from "../../src/core/bodySize.ts";
import type { Cm } from "../../src/core/quantity.ts";
import { IDEAL_ROWS, PREDICTED_ROWS, SIX_ML_ROWS } from "../tables/body.ts";
import { checkRows } from "../tables/checkRows.ts";

const height = (n: number): FormulaCm => {
  const covered = formulaHeight(n as Cm);
  if (!covered.ok) throw new Error(`a row under the formulas: ${n} cm`);
  return covered.value;
};

checkRows("ideal weight", IDEAL_ROWS, ({ heightCm, sex }) => idealWeight(height(heightCm), sex));
checkRows("predicted weight", PREDICTED_ROWS, ({ heightCm, sex }) => predictedWeight(height(heightCm), sex));
checkRows("six millilitres a kilogram", SIX_ML_ROWS, ({ heightCm, sex }) => 6 * predictedWeight(height(heightCm), sex));

describe("the two printed forms are not the same", () => {
  it("at 70 inches the centimetre form would fail the row of the inch form, 73.0", () => {
    expect(idealWeight(height(177.8), "male").toFixed(1)).toBe("73.0");
    expect(predictedWeight(height(177.8), "male").toFixed(1)).toBe("73.1");
  });
  it.each([
    [160, 0.03],
    [178, 0.11],
    [190, 0.17],
  ])("at %d cm they differ by %d kg", (cm, apart) => {
    for (const sex of ["female", "male"] as const) {
      expect((predictedWeight(height(cm), sex) - idealWeight(height(cm), sex)).toFixed(2)).toBe(apart.toFixed(2));
    }
  });
});

describe("the door", () => {
  it("opens at 152.4 cm", () => expect(formulaHeight(152.4 as Cm)).toEqual({ ok: true, value: 152.4 }));
  it.each([152.39, 140, 40])("refuses %d cm and says from where on", (cm) => {
    expect(formulaHeight(cm as Cm)).toEqual({
      ok: false,
      error: { kind: "below-formula-height", heightCm: cm, fromCm: 152.4 },
    });
  });
});

describe("properties", () => {
  const cm = fc.double({ min: 152.4, max: 230, noNaN: true });
  it("both are finite, never under their value at 60 inches, and higher in men by 4.5 kg", () => {
    fc.assert(
      fc.property(cm, (n) => {
        for (const formula of [idealWeight, predictedWeight]) {
          const woman = formula(height(n), "female");
          expect(woman).toBeGreaterThanOrEqual(45.5 - 1e-9);
          expect(woman).toBeLessThan(120);
          expect(formula(height(n), "male") - woman).toBeCloseTo(4.5, 9);
        }
      }),
    );
  });
});
