import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, it } from "vitest";
import { amount, convertAmount, isOver } from "../../src/core/doseAmount.ts";
import type { DoseUnit } from "../../src/core/doseUnits.ts";
import { anyAmount, anyNumber, anyUnit, MASSES, some } from "./doseArbitraries.ts";

const LIMITS: readonly [DoseUnit, number, number][] = [
  ["mcg", 0.001, 1_000_000_000],
  ["mg", 0.000001, 1_000_000],
  ["g", 0.000000001, 1000],
  ["units", 0.001, 10_000_000],
  ["mmol", 0.000001, 10_000],
  ["mL", 0.001, 20_000],
];

describe("the door", () => {
  it.each(LIMITS)("%s from %d to %d, ends included", (unit, min, max) => {
    const error = { kind: "out-of-range", min, max };
    expect(amount(min, unit)).toEqual({ ok: true, value: { value: min, unit } });
    expect(amount(max, unit)).toEqual({ ok: true, value: { value: max, unit } });
    expect(amount(min * 0.999, unit)).toEqual({ ok: false, error });
    expect(amount(max * 1.001, unit)).toEqual({ ok: false, error });
  });
  it("refuses nothing, less than nothing, and what is no number", () => {
    expect(amount(0, "mg").ok).toBe(false);
    expect(amount(-5, "mg").ok).toBe(false);
    expect(amount(NaN, "mg")).toEqual({ ok: false, error: { kind: "not-a-number" } });
    expect(amount(Infinity, "mg")).toEqual({ ok: false, error: { kind: "not-a-number" } });
  });
  it("lets only positive, finite numbers through", () => {
    fc.assert(
      fc.property(anyNumber, anyUnit, (n, unit) => {
        const result = amount(n, unit);
        if (result.ok) expect(Number.isFinite(result.value.value) && result.value.value > 0).toBe(true);
      }),
    );
  });
});

const CONVERSIONS: readonly [number, DoseUnit, number, DoseUnit][] = [
  [1, "mg", 1000, "mcg"],
  [1, "g", 1000, "mg"],
  [1, "g", 1_000_000, "mcg"],
  [100, "mcg", 0.1, "mg"],
  [4500, "mg", 4.5, "g"],
  [250, "mcg", 0.00025, "g"],
  [0.3, "mg", 300, "mcg"],
  // A thousandth is not exact in binary: dividing is exact here, multiplying by it is not.
  [35, "mcg", 0.035, "mg"],
  [0.035, "g", 35, "mg"],
  [1.1, "mg", 1100, "mcg"],
  [7, "mg", 7, "mg"],
  [7, "mmol", 7, "mmol"],
];

describe("conversion", () => {
  it.each(CONVERSIONS)("%d %s is %d %s", (value, from, expected, to) => {
    expect(convertAmount(some(value, from), to)).toEqual({ ok: true, value: { value: expected, unit: to } });
  });

  const KINDS: readonly (readonly DoseUnit[])[] = [MASSES, ["units"], ["mmol"], ["mL"]];
  const pairs = KINDS.flatMap((one) =>
    KINDS.filter((other) => other !== one).flatMap((other) => one.flatMap((from) => other.map((to) => [from, to]))),
  ) as [DoseUnit, DoseUnit][];
  it.each(pairs)("%s is never %s", (from, to) => {
    expect(convertAmount(some(5, from), to)).toEqual({ ok: false, error: { kind: "unit-mismatch", from, to } });
  });

  const mass = fc.constantFrom(...MASSES);
  const decimal = fc.integer({ min: 1, max: 999_999 }).map((n) => n / 1000);
  it("is the nearest double to the exact fraction", () => {
    const mcg = { mcg: 1, mg: 1000, g: 1_000_000 };
    fc.assert(
      fc.property(decimal, mass, mass, (n, from, to) => {
        const converted = convertAmount(some(n, from), to);
        const exact = new Fraction(n).mul(mcg[from]).div(mcg[to]);
        expect(converted.ok && converted.value.value / exact.valueOf() - 1).toBeLessThan(2 ** -51);
        expect(converted.ok && converted.value.value / exact.valueOf() - 1).toBeGreaterThan(-(2 ** -51));
      }),
    );
  });
  it("gives another possible amount, or says that it cannot", () => {
    fc.assert(
      fc.property(anyAmount, anyUnit, (given, unit) => {
        const converted = convertAmount(given, unit);
        if (!converted.ok) expect(converted.error).toEqual({ kind: "unit-mismatch", from: given.unit, to: unit });
        else expect(converted.value.value).toBeGreaterThan(0);
        expect(converted.ok).toBe(given.unit === unit || [given.unit, unit].every((u) => MASSES.includes(u as "mg")));
      }),
    );
  });
});

it("over is more than what doubles lose", () => {
  expect(isOver(6, 5.999999999999999)).toBe(false);
  expect(isOver(5, 5)).toBe(false);
  expect(isOver(5, 6)).toBe(false);
  expect(isOver(1 + 1.1e-9, 1)).toBe(true);
  expect(isOver(1 + 0.9e-9, 1)).toBe(false);
  expect(isOver(0.1, 0)).toBe(true);
});
