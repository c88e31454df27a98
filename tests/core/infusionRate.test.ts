import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { concentration } from "../../src/core/concentration.ts";
import { RATE_UNITS } from "../../src/core/doseUnits.ts";
import { infusionRate, isPerKg, mlPerH, orderedRate, pumpRate, type RunningWith } from "../../src/core/infusionRate.ts";
import { kg } from "../../src/core/quantities.ts";
import { checkRows } from "../tables/checkRows.ts";
import { PUMP_ROWS, REVERSE_ROWS } from "../tables/infusions.ts";
import { anyConcentration, anyKg, anyNumber, anyRateUnit, strong } from "./doseArbitraries.ts";
import { taken } from "./taken.ts";

type Row = (typeof PUMP_ROWS)[number]["given"];
const by = ({ kg: weight, strength }: Row): RunningWith => ({
  kg: weight === undefined ? undefined : taken(kg(weight)),
  concentration: strength === undefined ? undefined : taken(concentration(strength)),
});

checkRows("pump rate", PUMP_ROWS, (row) => taken(pumpRate(taken(infusionRate(row.value, row.unit)), by(row))));
checkRows("rate at the pump", REVERSE_ROWS, (row) => {
  const rate = taken(orderedRate(taken(mlPerH(row.value)), row.unit, by(row)));
  expect(rate.unit).toBe(row.unit);
  return rate.value;
});
it("there is a row for every unit of rate", () => {
  expect(new Set(PUMP_ROWS.map(({ given }) => given.unit))).toEqual(new Set(RATE_UNITS));
});

describe("the doors", () => {
  it.each([0.000001, 100_000])("takes a rate of %d", (n) => {
    expect(infusionRate(n, "mg/h")).toEqual({ ok: true, value: { value: n, unit: "mg/h" } });
  });
  it.each([0, 0.00000099, 100_001, -1])("refuses a rate of %d", (n) => {
    expect(infusionRate(n, "mg/h")).toEqual({ ok: false, error: { kind: "out-of-range", min: 1e-6, max: 100_000 } });
  });
  it("takes a pump from 0.0001 to 20,000 mL/h, ends included", () => {
    expect([0.0001, 20_000].map((n) => mlPerH(n).ok)).toEqual([true, true]);
    expect(mlPerH(0.000099)).toEqual({ ok: false, error: { kind: "out-of-range", min: 0.0001, max: 20_000 } });
    expect(mlPerH(20_001).ok).toBe(false);
  });
  it("refuses what is no number", () => {
    expect(infusionRate(NaN, "mg/h")).toEqual({ ok: false, error: { kind: "not-a-number" } });
  });
});

it("says which units are for each kilogram", () => {
  expect(RATE_UNITS.filter(isPerKg)).toEqual(RATE_UNITS.filter((unit) => unit.includes("/kg")));
});

describe("what is missing is named", () => {
  const rate = (unit: (typeof RATE_UNITS)[number]) => taken(infusionRate(1, unit));
  const weight = taken(kg(80));
  it.each(RATE_UNITS.filter((unit) => unit.includes("/kg")))("%s needs a weight", (unit) => {
    const error = { kind: "needs-kg", unit };
    expect(pumpRate(rate(unit), { concentration: strong(1, "mg") })).toEqual({ ok: false, error });
    expect(orderedRate(taken(mlPerH(1)), unit, { concentration: strong(1, "mg") })).toEqual({ ok: false, error });
  });
  it.each(RATE_UNITS.filter((unit) => !unit.startsWith("mL")))("%s needs a concentration", (unit) => {
    const error = { kind: "needs-concentration", unit };
    expect(pumpRate(rate(unit), { kg: weight })).toEqual({ ok: false, error });
    expect(orderedRate(taken(mlPerH(1)), unit, { kg: weight })).toEqual({ ok: false, error });
  });
  it("a concentration of another kind is refused", () => {
    expect(pumpRate(rate("mcg/min"), { concentration: strong(20, "units", 100) })).toEqual({
      ok: false,
      error: { kind: "unit-mismatch", from: "units", to: "mcg" },
    });
  });
});

it("a weight changes nothing where the unit has none", () => {
  const rate = taken(infusionRate(10, "mcg/min"));
  const of = { concentration: strong(16, "mcg") };
  expect(pumpRate(rate, { ...of, kg: taken(kg(80)) })).toEqual(pumpRate(rate, of));
});

it("a rate that no pump runs at is refused, both ways", () => {
  expect(pumpRate(taken(infusionRate(100_000, "g/h")), { concentration: strong(1, "mcg") })).toMatchObject({
    error: { kind: "out-of-range", max: 20_000 },
  });
  expect(orderedRate(taken(mlPerH(20_000)), "mcg/min", { concentration: strong(1000, "g") })).toMatchObject({
    error: { kind: "out-of-range", max: 100_000 },
  });
});

describe("properties", () => {
  it("there and back again is the same rate", () => {
    let compared = 0;
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 1000, noNaN: true }),
        anyRateUnit,
        anyKg,
        anyConcentration,
        (n, unit, weight, of) => {
          const rate = taken(infusionRate(n, unit));
          const with_ = { kg: weight, concentration: of };
          const pump = pumpRate(rate, with_);
          if (!pump.ok) return;
          compared += 1;
          const back = taken(orderedRate(pump.value, unit, with_));
          expect(Math.abs(back.value / n - 1)).toBeLessThan(1e-12);
          expect(back.unit).toBe(unit);
        },
      ),
      { numRuns: 2000 },
    );
    // Else nothing was shown.
    expect(compared).toBeGreaterThan(200);
  });
  it("is total, and what it gives a pump can run at", () => {
    const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
    fc.assert(
      fc.property(anyNumber, anyRateUnit, maybe(anyKg), maybe(anyConcentration), (n, unit, weight, of) => {
        const rate = infusionRate(n, unit);
        const pump = rate.ok ? pumpRate(rate.value, { kg: weight, concentration: of }) : rate;
        if (pump.ok) expect(pump.value >= 0.0001 && pump.value <= 20_000).toBe(true);
        const running = mlPerH(n);
        const back = running.ok ? orderedRate(running.value, unit, { kg: weight, concentration: of }) : running;
        if (back.ok) expect(back.value.value >= 1e-6 && back.value.value <= 1e5).toBe(true);
      }),
    );
  });
});
