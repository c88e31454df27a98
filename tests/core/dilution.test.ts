import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { concentration, perMl } from "../../src/core/concentration.ts";
import { dilute, mixedConcentration } from "../../src/core/dilution.ts";
import { ml } from "../../src/core/quantities.ts";
import { checkRows } from "../tables/checkRows.ts";
import { MIXED_ROWS, TAKE_ROWS } from "../tables/dilutions.ts";
import { anyConcentration, anyMl, strong } from "./doseArbitraries.ts";
import { taken } from "./taken.ts";

const vol = (n: number) => taken(ml(n));

checkRows("stock to take", TAKE_ROWS, ({ stock, target, finalMl }) => {
  const { takeMl, addMl } = taken(dilute(taken(concentration(stock)), taken(concentration(target)), vol(finalMl)));
  expect(takeMl + addMl).toBeCloseTo(finalMl, 12);
  return takeMl;
});
checkRows("mcg in each mL of a mixture", MIXED_ROWS, ({ stock, takeMl, addMl }) =>
  taken(perMl(taken(mixedConcentration(taken(concentration(stock)), vol(takeMl), vol(addMl))), "mcg")),
);

describe("how to dilute", () => {
  it("0.1 mL and 9.9 mL", () => {
    expect(dilute(strong(1, "mg"), strong(10, "mcg"), vol(10))).toEqual({
      ok: true,
      value: { takeMl: 0.1, addMl: 9.9 },
    });
  });
  it("reads a strength in any volume", () => {
    expect(taken(dilute(strong(10, "mg", 2), strong(4, "mg", 40), vol(50)))).toEqual({ takeMl: 1, addMl: 49 });
  });
  it("refuses what is stronger than the stock and says how much", () => {
    expect(dilute(strong(1, "mg"), strong(10, "mg"), vol(10))).toEqual({
      ok: false,
      error: { kind: "stronger-than-stock", times: 10 },
    });
  });
  it("the stock itself needs nothing added, also where doubles say a hair more", () => {
    expect(dilute(strong(2, "mg"), strong(2, "mg"), vol(10))).toEqual({ ok: true, value: { takeMl: 10, addMl: 0 } });
    expect(dilute(strong(1, "mg"), strong(1.0000000000000002, "mg"), vol(10))).toEqual({
      ok: true,
      value: { takeMl: 10, addMl: 0 },
    });
  });
  it("refuses less than one line of the finest syringe", () => {
    expect(dilute(strong(10, "mg"), strong(10, "mcg"), vol(5))).toEqual({
      ok: false,
      error: { kind: "too-small-to-measure", takeMl: 0.005, smallestMl: 0.01 },
    });
    expect(taken(dilute(strong(10, "mg"), strong(10, "mcg"), vol(10)))).toEqual({ takeMl: 0.01, addMl: 9.99 });
    const coarse = [
      { sizeMl: 3, divisionsPerMl: 10 },
      { sizeMl: 20, divisionsPerMl: 1 },
    ];
    expect(dilute(strong(10, "mg"), strong(10, "mcg"), vol(10), coarse)).toMatchObject({ error: { smallestMl: 0.1 } });
  });
  it("refuses another kind of unit", () => {
    expect(dilute(strong(10, "mg"), strong(10, "units"), vol(5))).toEqual({
      ok: false,
      error: { kind: "unit-mismatch", from: "units", to: "mg" },
    });
  });
});

describe("what results", () => {
  it("stays an amount in a volume", () => {
    expect(mixedConcentration(strong(1, "mg"), vol(1), vol(100))).toEqual({ ok: true, value: strong(1, "mg", 101) });
  });
  it("of nothing taken is refused", () => {
    expect(mixedConcentration(strong(1, "mg"), vol(0), vol(100))).toMatchObject({ error: { kind: "out-of-range" } });
  });
});

describe("properties", () => {
  it("what is made as told has the strength wanted, and nothing is negative", () => {
    let compared = 0;
    const weaker = fc.double({ min: 1e-4, max: 1, noNaN: true });
    fc.assert(
      fc.property(anyConcentration, weaker, anyMl, (stock, part, finalMl) => {
        const target = concentration({ ...stock, unit: stock.amount.unit, amount: stock.amount.value * part });
        if (!target.ok) return;
        const made = dilute(stock, target.value, finalMl);
        if (!made.ok) {
          expect(made.error.kind).toBe("too-small-to-measure");
          return;
        }
        expect(made.value.takeMl > 0 && made.value.addMl >= 0).toBe(true);
        const mixed = mixedConcentration(stock, made.value.takeMl, made.value.addMl);
        if (!mixed.ok) return;
        compared += 1;
        const [is, wanted] = [mixed.value, target.value].map((of) => taken(perMl(of, stock.amount.unit)));
        expect(Math.abs(is! / wanted! - 1)).toBeLessThan(1e-9);
      }),
      { numRuns: 500 },
    );
    expect(compared).toBeGreaterThan(100);
  });
  it("is total for any two strengths and any volume", () => {
    fc.assert(
      fc.property(anyConcentration, anyConcentration, anyMl, anyMl, (one, other, a, b) => {
        const made = dilute(one, other, a);
        if (made.ok) expect(made.value.takeMl).toBeLessThanOrEqual(a);
        const mixed = mixedConcentration(one, a, b);
        if (mixed.ok) expect(mixed.value.amount.value).toBeGreaterThan(0);
      }),
    );
  });
});
