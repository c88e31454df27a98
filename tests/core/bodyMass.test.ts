import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { adjustedWeight, bodyMassIndex, leanWeight } from "../../src/core/bodyMass.ts";
import type { Cm, Kg } from "../../src/core/quantity.ts";
import { ADJUSTED_ROWS, BMI_ROWS, LEAN_ROWS } from "../tables/body.ts";
import { checkRows } from "../tables/checkRows.ts";

const kg = (n: number): Kg => n as Kg;
const cm = (n: number): Cm => n as Cm;

checkRows("lean weight", LEAN_ROWS, ({ kg: weight, heightCm, sex }) => leanWeight(kg(weight), cm(heightCm), sex));
checkRows("adjusted weight", ADJUSTED_ROWS, ({ actualKg, idealKg }) => adjustedWeight(kg(actualKg), kg(idealKg)));
checkRows("body mass index", BMI_ROWS, ({ kg: weight, heightCm }) => bodyMassIndex(kg(weight), cm(heightCm)));

const anyKg = fc.double({ min: 2, max: 300, noNaN: true }).map(kg);
const anyCm = fc.double({ min: 40, max: 230, noNaN: true }).map(cm);
const anySex = fc.constantFrom("female" as const, "male" as const);

describe("properties", () => {
  it("lean weight is finite, above nothing and grows with weight", () => {
    fc.assert(
      fc.property(anyKg, anyCm, anySex, (weight, height, sex) => {
        const lean = leanWeight(weight, height, sex);
        expect(Number.isFinite(lean)).toBe(true);
        expect(lean).toBeGreaterThan(0);
        expect(leanWeight(kg(weight + 1), height, sex)).toBeGreaterThan(lean);
      }),
    );
  });
  it("lean weight is under the actual one from the index where the equation crosses it", () => {
    fc.assert(
      fc.property(anyKg, anyCm, (weight, height) => {
        fc.pre(bodyMassIndex(weight, height) > 12);
        expect(leanWeight(weight, height, "male")).toBeLessThan(weight);
        expect(leanWeight(weight, height, "female")).toBeLessThan(weight);
      }),
    );
  });
  it("in a man with an index under it, lean weight would be over the actual one", () => {
    expect(bodyMassIndex(kg(38), cm(180))).toBeLessThan(12);
    expect(leanWeight(kg(38), cm(180), "male")).toBeGreaterThan(38);
  });
  it("adjusted weight lies between ideal and actual, and is either when they are the same", () => {
    fc.assert(
      fc.property(anyKg, anyKg, (actual, ideal) => {
        const adjusted = adjustedWeight(actual, ideal);
        expect(adjusted).toBeGreaterThanOrEqual(Math.min(actual, ideal) - 1e-9);
        expect(adjusted).toBeLessThanOrEqual(Math.max(actual, ideal) + 1e-9);
        expect(adjustedWeight(ideal, ideal)).toBe(ideal);
      }),
    );
  });
  it("the index gives the weight back", () => {
    fc.assert(
      fc.property(anyKg, anyCm, (weight, height) => {
        const metres = height / 100;
        expect(bodyMassIndex(weight, height) * metres * metres).toBeCloseTo(weight, 9);
      }),
    );
  });
});
