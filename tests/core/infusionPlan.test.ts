import { describe, expect, it } from "vitest";
import { planInfusion, type InfusionOrder } from "../../src/core/infusionPlan.ts";
import { infusionRate } from "../../src/core/infusionRate.ts";
import { strong, weighing } from "./doseArbitraries.ts";
import { taken } from "./taken.ts";

const order: InfusionOrder = { unit: "mcg/kg/min", low: 0.02, start: 0.1, high: 1, weight: "actual" };
const bag = strong(4, "mg", 250);
const rate = (n: number, unit = order.unit) => taken(infusionRate(n, unit));

describe("an infusion by weight", () => {
  it("gives each rate with its mL/h, and the weight", () => {
    const weight = weighing(80);
    const planned = taken(planInfusion(order, { weight, concentration: bag }));
    expect(planned).toMatchObject({ weight, kind: "computed" });
    expect([planned.low.rate, planned.start.rate, planned.high.rate]).toEqual([rate(0.02), rate(0.1), rate(1)]);
    // By hand: 0.02, 0.1 and 1 × 80 × 60 / 16.
    [6, 30, 300].forEach((expected, i) =>
      expect([planned.low, planned.start, planned.high][i]?.mlPerH).toBeCloseTo(expected, 9),
    );
  });
  it("is an estimate on an estimated weight", () => {
    expect(taken(planInfusion(order, { weight: weighing(80, { kind: "estimated" }), concentration: bag })).kind).toBe(
      "estimated",
    );
  });
  it("needs the weight ordered and names it; actual where none is named", () => {
    const ideal: InfusionOrder = { ...order, weight: "ideal" };
    const error = { kind: "needs-weight", scalar: "ideal" };
    expect(planInfusion(ideal, { concentration: bag })).toEqual({ ok: false, error });
    expect(planInfusion(ideal, { concentration: bag, weight: weighing(80) })).toEqual({ ok: false, error });
    const { weight: _, ...unnamed } = order;
    expect(planInfusion(unnamed, { concentration: bag })).toMatchObject({ error: { scalar: "actual" } });
  });
});

describe("an infusion whatever the weight", () => {
  it("needs and names none", () => {
    const fixed: InfusionOrder = { unit: "units/min", low: 0.01, start: 0.03, high: 0.04 };
    const of = { concentration: strong(20, "units", 100) };
    const planned = taken(planInfusion(fixed, of));
    expect(planned.start.mlPerH).toBeCloseTo(9, 9);
    expect(planned.kind).toBe("computed");
    expect("weight" in planned).toBe(false);
    expect(planInfusion(fixed, { ...of, weight: weighing(80, { kind: "estimated" }) })).toEqual({
      ok: true,
      value: planned,
    });
  });
  it("of fluid needs no concentration", () => {
    const fluid: InfusionOrder = { unit: "mL/h", low: 50, start: 100, high: 150 };
    expect(taken(planInfusion(fluid, {})).high.mlPerH).toBe(150);
  });
});

describe("refusals are passed on", () => {
  const weight = weighing(80);
  it("without a concentration there is no mL/h", () => {
    expect(planInfusion(order, { weight })).toEqual({
      ok: false,
      error: { kind: "needs-concentration", unit: "mcg/kg/min" },
    });
  });
  it.each(["low", "start", "high"] as const)("an impossible %s rate", (which) => {
    const by = { weight, concentration: bag };
    expect(planInfusion({ ...order, [which]: 0 }, by)).toMatchObject({ error: { kind: "out-of-range", min: 1e-6 } });
    expect(planInfusion({ ...order, [which]: 90_000 }, by)).toMatchObject({ error: { max: 20_000 } });
  });
});
