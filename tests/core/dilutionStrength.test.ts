import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkRecipe, compareStrength, type Recipe } from "../../src/core/dilutionStrength.ts";
import { mixedConcentration } from "../../src/core/dilution.ts";
import { ml } from "../../src/core/quantities.ts";
import { anyConcentration, strong } from "./doseArbitraries.ts";
import { taken } from "./taken.ts";

const vol = (n: number) => taken(ml(n));
const mixed = (of: number, takeMl: number, addMl: number) =>
  taken(mixedConcentration(strong(of, "mg"), vol(takeMl), vol(addMl)));
const tenth = strong(10, "mcg");

describe("the traps of diluting by hand", () => {
  it("1 mL of 1 mg/mL into 9 mL is ten times too strong for 10 mcg/mL", () => {
    const compared = taken(compareStrength(mixed(1, 1, 9), tenth));
    expect(compared.tenFold).toEqual({ is: "stronger", times: 10 });
    expect(compared.ratio).toBeCloseTo(10, 12);
    expect(compared.percentOff).toBeCloseTo(900, 9);
  });
  it("0.1 mL into 9.9 mL is right", () => {
    const compared = taken(compareStrength(mixed(1, 0.1, 9.9), tenth));
    expect(compared.tenFold).toBeUndefined();
    expect(compared.ratio).toBeCloseTo(1, 12);
    expect(compared.percentOff).toBeCloseTo(0, 9);
  });
  it("1 mL added to a full bag of 100 mL is 1 % weak and no slip", () => {
    const compared = taken(compareStrength(mixed(1, 1, 100), tenth));
    expect(compared.tenFold).toBeUndefined();
    expect(compared.percentOff).toBeCloseTo(-0.990099, 6);
  });
  it("1 mL added to a full 10 mL is still the ten-fold slip", () => {
    expect(taken(compareStrength(mixed(1, 1, 10), tenth)).tenFold).toEqual({ is: "stronger", times: 10 });
  });
  it("phenylephrine 10 mg in 250 mL is 40 mcg/mL, not 100: wrong, but no slip of the point", () => {
    const compared = taken(compareStrength(strong(10, "mg", 250), strong(100, "mcg")));
    expect(compared.ratio).toBeCloseTo(0.4, 12);
    expect(compared.percentOff).toBeCloseTo(-60, 9);
    expect(compared.tenFold).toBeUndefined();
  });
  it("milligrams for micrograms are a thousand times", () => {
    expect(taken(compareStrength(strong(10, "mg"), tenth)).tenFold).toEqual({ is: "stronger", times: 1000 });
    expect(taken(compareStrength(tenth, strong(10, "mg"))).tenFold).toEqual({ is: "weaker", times: 1000 });
  });
});

describe("what counts as a slip of the point", () => {
  it.each([
    [8.99, undefined],
    [9, { is: "stronger", times: 10 }],
    [11, { is: "stronger", times: 10 }],
    [11.01, undefined],
    [0.0899, undefined],
    [0.09, { is: "weaker", times: 10 }],
    [0.11, { is: "weaker", times: 10 }],
    [0.1101, undefined],
    [100, { is: "stronger", times: 100 }],
    [1, undefined],
    [0.95, undefined],
    [2, undefined],
    [5, undefined],
  ])("%d of 1: %o", (n, tenFold) => {
    expect(taken(compareStrength(strong(n, "mg"), strong(1, "mg"))).tenFold).toEqual(tenFold);
  });
});

it("strengths of another kind are refused", () => {
  expect(compareStrength(strong(1, "units"), strong(1, "mg"))).toEqual({
    ok: false,
    error: { kind: "unit-mismatch", from: "units", to: "mg" },
  });
});

describe("a recipe", () => {
  const recipe: Recipe = {
    stock: { amount: 1, unit: "mg", volumeMl: 1 },
    takeMl: 1,
    addMl: 99,
    makes: { amount: 10, unit: "mcg", volumeMl: 1 },
  };
  it("that makes what it says", () => {
    expect(taken(checkRecipe(recipe)).ratio).toBeCloseTo(1, 12);
  });
  it("that is ten times off", () => {
    expect(taken(checkRecipe({ ...recipe, addMl: 9 })).tenFold).toEqual({ is: "stronger", times: 10 });
  });
  const outOfRange = (max: number) => ({ ok: false, error: { kind: "out-of-range", max } });
  it.each([
    ["stock", { stock: { amount: 0, unit: "mg", volumeMl: 1 } }, outOfRange(1_000_000)],
    ["claim", { makes: { amount: 0, unit: "mcg", volumeMl: 1 } }, outOfRange(1_000_000_000)],
    ["volume taken", { takeMl: -1 }, outOfRange(20_000)],
    ["volume added", { addMl: -1 }, outOfRange(20_000)],
    ["empty syringe", { takeMl: 0 }, outOfRange(1_000_000)],
    ["unit", { makes: { amount: 1, unit: "units", volumeMl: 1 } }, { ok: false, error: { kind: "unit-mismatch" } }],
  ] as const)("with an impossible %s is refused", (_name, wrong, refused) => {
    expect(checkRecipe({ ...recipe, ...wrong })).toMatchObject(refused);
  });
});

it("is total: a positive, finite ratio; the other way round it is the inverse and the opposite slip", () => {
  fc.assert(
    fc.property(anyConcentration, anyConcentration, (one, other) => {
      const there = compareStrength(one, other);
      const back = compareStrength(other, one);
      expect(back.ok).toBe(there.ok);
      if (!there.ok || !back.ok) return;
      expect(there.value.ratio > 0 && Number.isFinite(there.value.ratio)).toBe(true);
      expect(there.value.ratio * back.value.ratio).toBeCloseTo(1, 9);
      expect(Number.isFinite(there.value.percentOff)).toBe(true);
    }),
  );
});
