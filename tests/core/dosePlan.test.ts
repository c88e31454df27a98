import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, expectTypeOf, it } from "vitest";
import type { InferOutput } from "valibot";
import { planDose, type DoseOrder } from "../../src/core/dosePlan.ts";
import type { RepeatOrder } from "../../src/core/doseRepeat.ts";
import type { DoseWeight } from "../../src/core/doseWeight.ts";
import type { InfusionOrder } from "../../src/core/infusionPlan.ts";
import type { Recipe } from "../../src/core/dilutionStrength.ts";
import type { Strength } from "../../src/core/concentration.ts";
import type { ScaledWeight } from "../../src/core/weightFor.ts";
import type { drug, osmotic } from "../../src/protocol/schema/drugs.ts";
import { checkRows } from "../tables/checkRows.ts";
import { DOSE_ROWS } from "../tables/doses.ts";
import { anyKg, anyNumber, some, weighing } from "./doseArbitraries.ts";
import { taken } from "./taken.ts";

checkRows("usual dose", DOSE_ROWS, ({ order, kg, shocked = false }) => {
  const planned = taken(planDose(order, weighing(kg), { shocked }));
  expect(planned.usual.unit).toBe(order.unit);
  return planned.usual.value;
});

const order: DoseOrder = { per: "kg", unit: "mg", low: 1, usual: 1.5, high: 2, weight: "ideal" };
const ideal = weighing(80, { scalar: "ideal", kind: "computed" });
const calm = { shocked: false };
const shocked = { shocked: true };

describe("by weight", () => {
  it("gives the span, what it was worked out from, and no flag", () => {
    expect(planDose(order, ideal, calm)).toEqual({
      ok: true,
      value: {
        low: some(80, "mg"),
        usual: some(120, "mg"),
        high: some(160, "mg"),
        perKg: 1.5,
        weight: ideal,
        shocked: false,
        reduced: false,
        capped: false,
        raised: false,
        kind: "computed",
      },
    });
  });
  it("needs the weight ordered and names it", () => {
    const error = { kind: "needs-weight", scalar: "ideal" };
    expect(planDose(order, undefined, calm)).toEqual({ ok: false, error });
    expect(planDose(order, weighing(80), calm)).toEqual({ ok: false, error });
    const { weight: _, ...unnamed } = order;
    expect(planDose(unnamed, ideal, calm)).toEqual({ ok: false, error: { kind: "needs-weight", scalar: "actual" } });
    expect(taken(planDose(unnamed, weighing(80), calm)).usual).toEqual(some(120, "mg"));
  });
  it("takes a weight that was found for the one ordered and says so", () => {
    const child: DoseWeight = { ...weighing(20), scalar: "ideal", scalarUsed: "actual" };
    expect(taken(planDose(order, child, calm)).weight).toEqual(child);
  });
  it.each([
    ["measured", "computed"],
    ["computed", "computed"],
    ["estimated", "estimated"],
  ] as const)("a %s weight makes the dose %s", (kind, expected) => {
    expect(taken(planDose(order, { ...ideal, kind }, calm)).kind).toBe(expected);
  });
});

describe("at once, whatever the weight", () => {
  const once: DoseOrder = { per: "dose", unit: "g", low: 1, usual: 1, high: 2 };
  it("needs no weight and names none", () => {
    const planned = taken(planDose(once, undefined, calm));
    expect(planned).toEqual({
      low: some(1, "g"),
      usual: some(1, "g"),
      high: some(2, "g"),
      shocked: false,
      reduced: false,
      capped: false,
      raised: false,
      kind: "computed",
    });
  });
  it("does not rest on an estimated weight", () => {
    expect(planDose(once, weighing(50, { kind: "estimated" }), calm)).toEqual(planDose(once, undefined, calm));
  });
});

describe("in shock", () => {
  const less: DoseOrder = { ...order, shock: { low: 0.5, usual: 0.75, high: 1 } };
  it("uses the amounts for shock", () => {
    const planned = taken(planDose(less, ideal, shocked));
    expect([planned.low, planned.usual, planned.high].map(({ value }) => value)).toEqual([40, 60, 80]);
    expect(planned).toMatchObject({ perKg: 0.75, shocked: true, reduced: true, capped: false, raised: false });
  });
  it("not while there is none", () => {
    expect(planDose(less, ideal, calm)).toEqual(planDose(order, ideal, calm));
  });
  it("not where the order has no such amounts", () => {
    expect(planDose(order, ideal, shocked)).toEqual(planDose(order, ideal, calm));
  });
  it("does not call more, or the same, reduced", () => {
    const more: DoseOrder = { ...order, shock: { low: 1.5, usual: 2, high: 2 } };
    expect(taken(planDose(more, ideal, shocked))).toMatchObject({ shocked: true, reduced: false });
    const same: DoseOrder = { ...order, shock: { low: 1, usual: 1.5, high: 2 } };
    expect(taken(planDose(same, ideal, shocked))).toMatchObject({ shocked: true, reduced: false });
  });
  it("keeps to the cap", () => {
    expect(taken(planDose({ ...less, cap: 50 }, ideal, shocked))).toMatchObject({
      low: { value: 40 },
      usual: { value: 50 },
      high: { value: 50 },
      capped: true,
      reduced: true,
    });
  });
});

describe("limits", () => {
  const plan = (limits: Partial<DoseOrder>) => {
    const { low, usual, high, capped, raised } = taken(planDose({ ...order, ...limits }, ideal, calm));
    return [low.value, usual.value, high.value, capped, raised];
  };
  it("a cap over everything changes nothing", () => expect(plan({ cap: 161 })).toEqual([80, 120, 160, false, false]));
  it("a cap on the high amount alone", () => expect(plan({ cap: 150 })).toEqual([80, 120, 150, false, false]));
  it("a cap at the usual amount takes nothing from it", () =>
    expect(plan({ cap: 120 })).toEqual([80, 120, 120, false, false]));
  it("a cap under it does", () => expect(plan({ cap: 119 })).toEqual([80, 119, 119, true, false]));
  it("a cap under everything", () => expect(plan({ cap: 50 })).toEqual([50, 50, 50, true, false]));
  it("a minimum on the low amount alone", () => expect(plan({ minimum: 100 })).toEqual([100, 120, 160, false, false]));
  it("a minimum at the usual amount adds nothing", () =>
    expect(plan({ minimum: 120 })).toEqual([120, 120, 160, false, false]));
  it("a minimum over it does", () => expect(plan({ minimum: 121 })).toEqual([121, 121, 160, false, true]));
  it("of a cap under the minimum the cap holds", () =>
    expect(plan({ minimum: 100, cap: 90 })).toEqual([90, 90, 90, true, false]));
  it("limits count at once too", () => {
    const once: DoseOrder = { per: "dose", unit: "mg", low: 1, usual: 5, high: 9, minimum: 2, cap: 8 };
    expect(taken(planDose(once, undefined, calm))).toMatchObject({
      low: { value: 2 },
      usual: { value: 5 },
      high: { value: 8 },
    });
  });
});

describe("what is no amount is refused", () => {
  const mg = { ok: false, error: { kind: "out-of-range", min: 0.000001, max: 1_000_000 } };
  it.each(["low", "usual", "high"] as const)("as the %s amount", (which) => {
    expect(planDose({ ...order, [which]: 1e9 }, ideal, calm)).toEqual(mg);
    expect(planDose({ ...order, [which]: -1 }, ideal, calm)).toEqual(mg);
    expect(planDose({ ...order, [which]: NaN }, ideal, calm)).toEqual({ ok: false, error: { kind: "not-a-number" } });
  });
});

describe("properties", () => {
  const decimal = fc.integer({ min: 1, max: 9999 }).map((n) => n / 100);
  const tenths = fc.integer({ min: 20, max: 3000 }).map((n) => n / 10);
  it("agrees with exact fractions", () => {
    fc.assert(
      fc.property(decimal, tenths, (perKg, kg) => {
        const exact = new Fraction(String(perKg)).mul(String(kg)).valueOf();
        const one: DoseOrder = { per: "kg", unit: "mg", low: perKg, usual: perKg, high: perKg };
        const { usual } = taken(planDose(one, weighing(kg), calm));
        expect(Math.abs(usual.value / exact - 1)).toBeLessThanOrEqual(2 ** -51);
      }),
    );
  });
  it("stays in order, at or under the cap, at or over the minimum", () => {
    fc.assert(
      fc.property(fc.tuple(decimal, decimal, decimal), anyKg, decimal, decimal, (amounts, kg, one, other) => {
        const [low, usual, high] = amounts.sort((a, b) => a - b);
        const [minimum, cap] = [Math.min(one, other), Math.max(one, other)];
        const limited: DoseOrder = { per: "kg", unit: "mg", low, usual, high, minimum, cap };
        const planned = taken(planDose(limited, weighing(kg), calm));
        const values = [minimum, planned.low.value, planned.usual.value, planned.high.value, cap];
        expect(values.toSorted((a, b) => a - b)).toEqual(values);
      }),
    );
  });
  it("never throws and never gives what is no amount", () => {
    const limit = fc.option(anyNumber, { nil: undefined });
    fc.assert(
      fc.property(anyNumber, anyNumber, anyNumber, limit, limit, anyKg, (low, usual, high, minimum, cap, kg) => {
        const wild: DoseOrder = { per: "kg", unit: "mcg", low, usual, high, minimum, cap };
        const planned = planDose(wild, weighing(kg), calm);
        if (!planned.ok) return;
        for (const { value } of [planned.value.low, planned.value.usual, planned.value.high]) {
          expect(Number.isFinite(value) && value > 0).toBe(true);
        }
      }),
    );
  });
});

it("takes what the protocol file holds, and the weight found for it, as they are", () => {
  type Drug = InferOutput<typeof drug>;
  expectTypeOf<Drug["doses"][number]>().toExtend<DoseOrder & RepeatOrder>();
  expectTypeOf<InferOutput<typeof osmotic>["doses"][number]>().toExtend<DoseOrder>();
  expectTypeOf<Drug["infusions"][number]>().toExtend<InfusionOrder>();
  expectTypeOf<Drug["concentrations"][number]>().toExtend<Strength>();
  expectTypeOf<Drug["recipes"][number]>().toExtend<Recipe>();
  expectTypeOf<ScaledWeight>().toExtend<DoseWeight>();
});
