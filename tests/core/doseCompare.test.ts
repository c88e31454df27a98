import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compareDose } from "../../src/core/doseCompare.ts";
import { convertAmount } from "../../src/core/doseAmount.ts";
import { anyAmount, some } from "./doseArbitraries.ts";

const ROWS = [
  { given: some(100, "mg"), planned: some(100, "mg"), cap: undefined, percentOff: 0, overCap: false },
  { given: some(50, "mg"), planned: some(100, "mg"), cap: some(200, "mg"), percentOff: -50, overCap: false },
  { given: some(1, "g"), planned: some(100, "mg"), cap: some(200, "mg"), percentOff: 900, overCap: true },
  { given: some(200, "mg"), planned: some(100, "mg"), cap: some(200, "mg"), percentOff: 100, overCap: false },
  { given: some(201, "mg"), planned: some(100, "mg"), cap: some(0.2, "g"), percentOff: 101, overCap: true },
  { given: some(150, "mcg"), planned: some(0.1, "mg"), cap: some(140, "mcg"), percentOff: 50, overCap: true },
];

describe("a dose that was said against the plan", () => {
  it.each(ROWS)("$given.value $given.unit of $planned.value $planned.unit", (row) => {
    const compared = compareDose(row.given, row.planned, row.cap);
    expect(compared.ok && compared.value.percentOff).toBeCloseTo(row.percentOff, 9);
    expect(compared.ok && compared.value.overCap).toBe(row.overCap);
  });
  it("refuses other kinds of unit, in the plan and in the cap", () => {
    expect(compareDose(some(1, "mL"), some(1, "mg"))).toEqual({
      ok: false,
      error: { kind: "unit-mismatch", from: "mL", to: "mg" },
    });
    expect(compareDose(some(1, "mg"), some(1, "mg"), some(1, "units"))).toEqual({
      ok: false,
      error: { kind: "unit-mismatch", from: "units", to: "mg" },
    });
  });
  it("is total: more than −100 %, and finite", () => {
    fc.assert(
      fc.property(anyAmount, anyAmount, fc.option(anyAmount, { nil: undefined }), (given, planned, cap) => {
        const compared = compareDose(given, planned, cap);
        const fits =
          convertAmount(given, planned.unit).ok && (cap === undefined || convertAmount(cap, planned.unit).ok);
        expect(compared.ok).toBe(fits);
        if (!compared.ok) return;
        expect(compared.value.percentOff).toBeGreaterThanOrEqual(-100);
        expect(Number.isFinite(compared.value.percentOff)).toBe(true);
      }),
    );
  });
});
