import fc from "fast-check";
import { expect, it } from "vitest";
import { paco2 } from "../../src/core/carbonDioxide.ts";
import { cerebralFlowChange, pctPerMmHg } from "../../src/core/cerebralFlow.ts";
import { checkRows } from "../tables/checkRows.ts";
import { FLOW_ROWS } from "../tables/ventilation.ts";
import { taken } from "./taken.ts";

const change = (before: number, after: number, slope = 3) =>
  cerebralFlowChange(taken(paco2(before)), taken(paco2(after)), {
    slopePctPerMmHg: taken(pctPerMmHg(slope)),
    fromMmHg: taken(paco2(20)),
    toMmHg: taken(paco2(60)),
  });

checkRows("change of flow, %", FLOW_ROWS, ({ before, after, slope }) => change(before, after, slope).percent);

it("is marked as a model's", () => expect(change(40, 45)).toEqual({ kind: "model", percent: 15 }));
it("holds still outside the range, on either side and for either pressure", () => {
  expect(change(30, 10).percent).toBe(change(30, 20).percent);
  expect(change(50, 90).percent).toBe(change(50, 60).percent);
  expect(change(10, 30).percent).toBe(30);
  expect(change(90, 50).percent).toBe(-30);
});
it("cannot take away more than all", () => {
  expect(change(60, 20, 2.4).percent).toBeCloseTo(-96, 9);
  expect(change(60, 20, 3).percent).toBe(-100);
});
it("the limits of the slope are inside", () => {
  const outside = { ok: false, error: { kind: "out-of-range", min: 0, max: 10 } };
  expect([pctPerMmHg(0).ok, pctPerMmHg(10).ok]).toEqual([true, true]);
  expect([pctPerMmHg(-0.1), pctPerMmHg(10.1)]).toEqual([outside, outside]);
});
it("less CO2 never means more flow", () => {
  const co2 = fc.double({ min: 5, max: 200, noNaN: true });
  fc.assert(
    fc.property(co2, co2, fc.double({ min: 0, max: 10, noNaN: true }), (before, after, slope) => {
      const { percent } = change(before, after, slope);
      expect(percent).toBeGreaterThanOrEqual(-100);
      expect(percent).toBeLessThanOrEqual(400);
      expect(percent * (after - before)).toBeGreaterThanOrEqual(0);
    }),
  );
});
