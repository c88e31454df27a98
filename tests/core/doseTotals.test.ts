import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { totalGiven, totalPerKg, totalsByDrug } from "../../src/core/doseTotals.ts";
import { kg } from "../../src/core/quantities.ts";
import { anyAmount, anyKg, anyUnit, some } from "./doseArbitraries.ts";
import { taken } from "./taken.ts";

describe("of one drug", () => {
  it("adds in the unit wanted", () => {
    expect(totalGiven([some(100, "mg"), some(500, "mcg"), some(1, "g")], "mg")).toEqual({
      ok: true,
      value: { value: 1100.5, unit: "mg", count: 3 },
    });
  });
  it("is nothing of nothing", () => {
    expect(totalGiven([], "units")).toEqual({ ok: true, value: { value: 0, unit: "units", count: 0 } });
  });
  it("refuses to leave one out", () => {
    expect(totalGiven([some(1, "mg"), some(2, "mL")], "mg")).toEqual({
      ok: false,
      error: { kind: "unit-mismatch", from: "mL", to: "mg" },
    });
  });
  it("for each kilogram", () => {
    expect(totalPerKg(taken(totalGiven([some(160, "mg"), some(80, "mg")], "mg")), taken(kg(80)))).toBe(3);
  });
  it("is finite, never negative, and the order does not matter", () => {
    fc.assert(
      fc.property(fc.array(anyAmount), anyUnit, anyKg, (given, unit, weight) => {
        const total = totalGiven(given, unit);
        const back = totalGiven([...given].reverse(), unit);
        expect(back.ok).toBe(total.ok);
        if (!total.ok || !back.ok) return;
        expect(total.value.count).toBe(given.length);
        expect(Math.abs(back.value.value - total.value.value)).toBeLessThanOrEqual(1e-9 * total.value.value);
        const each = totalPerKg(total.value, weight);
        expect(Number.isFinite(each) && each >= 0).toBe(true);
      }),
    );
  });
});

describe("of each drug", () => {
  it("keeps drugs apart, in the order and unit first given", () => {
    const totals = totalsByDrug([
      { drugId: "fentanyl", amount: some(100, "mcg") },
      { drugId: "ketamine", amount: some(120, "mg") },
      { drugId: "fentanyl", amount: some(0.05, "mg") },
    ]);
    expect([...totals]).toEqual([
      ["fentanyl", { ok: true, value: { value: 150, unit: "mcg", count: 2 } }],
      ["ketamine", { ok: true, value: { value: 120, unit: "mg", count: 1 } }],
    ]);
  });
  it("a mismatch costs only that drug its total", () => {
    const totals = totalsByDrug([
      { drugId: "vasopressin", amount: some(2, "units") },
      { drugId: "vasopressin", amount: some(2, "mg") },
      { drugId: "ketamine", amount: some(120, "mg") },
    ]);
    expect(totals.get("vasopressin")).toEqual({
      ok: false,
      error: { kind: "unit-mismatch", from: "mg", to: "units" },
    });
    expect(totals.get("ketamine")?.ok).toBe(true);
  });
  it("of none is none", () => expect(totalsByDrug([]).size).toBe(0));
});
