import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { concentration, percentConcentration, perMl } from "../../src/core/concentration.ts";
import { checkRows } from "../tables/checkRows.ts";
import { PER_ML_ROWS } from "../tables/dilutions.ts";
import { anyConcentration, anyNumber, anyUnit, some, strong } from "./doseArbitraries.ts";
import { taken } from "./taken.ts";

checkRows("amount in each mL", PER_ML_ROWS, ({ strength, unit }) => taken(perMl(taken(concentration(strength)), unit)));

describe("the door", () => {
  it("keeps a strength as it was said", () => {
    expect(concentration({ amount: 4, unit: "mg", volumeMl: 250 })).toEqual({
      ok: true,
      value: { amount: some(4, "mg"), volumeMl: 250 },
    });
  });
  it("refuses a volume in a volume", () => {
    expect(concentration({ amount: 4, unit: "mL", volumeMl: 250 })).toEqual({
      ok: false,
      error: { kind: "not-a-strength" },
    });
  });
  it("refuses an impossible amount or volume, each with its own limits", () => {
    expect(concentration({ amount: 0, unit: "mg", volumeMl: 250 })).toEqual({
      ok: false,
      error: { kind: "out-of-range", min: 0.000001, max: 1_000_000 },
    });
    expect(concentration({ amount: 4, unit: "mg", volumeMl: 0 })).toEqual({
      ok: false,
      error: { kind: "out-of-range", min: 0.001, max: 20_000 },
    });
  });
  it("is total", () => {
    fc.assert(
      fc.property(anyNumber, anyUnit, anyNumber, (of, unit, volumeMl) => {
        const result = concentration({ amount: of, unit, volumeMl });
        if (result.ok) expect(result.value.amount.value > 0 && result.value.volumeMl > 0).toBe(true);
      }),
    );
  });
});

describe("per cent", () => {
  it("is grams in 100 mL", () => expect(percentConcentration(20)).toEqual({ ok: true, value: strong(20, "g", 100) }));
  it("refuses none", () => expect(percentConcentration(0).ok).toBe(false));
});

describe("in each mL", () => {
  it("refuses another kind of unit", () => {
    expect(perMl(strong(20, "units", 100), "mcg")).toEqual({
      ok: false,
      error: { kind: "unit-mismatch", from: "units", to: "mcg" },
    });
  });
  it("is positive and finite", () => {
    fc.assert(
      fc.property(anyConcentration, (of) => {
        const each = taken(perMl(of, of.amount.unit));
        expect(Number.isFinite(each) && each > 0).toBe(true);
      }),
    );
  });
});
