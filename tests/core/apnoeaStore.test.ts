import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { apnoeaStore, apnoeaTime, residualCapacity } from "../../src/core/apnoeaStore.ts";
import { fraction, kg, ml, mlPerKg, mlPerMin } from "../../src/core/quantities.ts";
import { checkRows } from "../tables/checkRows.ts";
import { APNOEA_ROWS, RESIDUAL_ROWS, STORE_ROWS } from "../tables/oxygen.ts";
import { taken } from "./taken.ts";

const store = (frc: number, start: number, end: number): number =>
  apnoeaStore(taken(ml(frc)), taken(fraction(start)), taken(fraction(end)));
const time = (storeMl: number, uptake: number) => apnoeaTime(taken(ml(storeMl)), taken(mlPerMin(uptake)));

checkRows("residual capacity", RESIDUAL_ROWS, (row) => residualCapacity(taken(mlPerKg(row.perKg)), taken(kg(row.kg))));
checkRows("oxygen store", STORE_ROWS, ({ frc, start, end }) => store(frc, start, end));
checkRows("time to use it", APNOEA_ROWS, ({ store: s, uptake }) => taken(time(s, uptake)).minutes);

it("a time is always marked as a model's", () => {
  expect(time(1000, 250)).toEqual({ ok: true, value: { kind: "model", minutes: 4 } });
});
it("lungs that start at the end, or below it, hold nothing to use", () => {
  expect(store(2000, 0.1, 0.1)).toBe(0);
  expect(store(2000, 0.05, 0.1)).toBe(0);
  expect(taken(time(0, 250)).minutes).toBe(0);
});
it.each([
  [1617, 0],
  [0, 0],
  [1617, 5e-324],
])("%d mL at %d mL/min has no time to give", (storeMl, uptake) => {
  expect(time(storeMl, uptake)).toEqual({ ok: false, error: { kind: "no-uptake" } });
});

describe("properties", () => {
  const volume = fc.double({ min: 0, max: 20_000, noNaN: true });
  const part = fc.double({ min: 0, max: 1, noNaN: true });

  it("the store is never negative and never more than the lungs hold", () => {
    fc.assert(
      fc.property(volume, part, part, (frc, start, end) => {
        expect(store(frc, start, end)).toBeGreaterThanOrEqual(0);
        expect(store(frc, start, end)).toBeLessThanOrEqual(frc * start);
      }),
    );
  });
  it("every time is finite and uses the store up, or is refused", () => {
    fc.assert(
      fc.property(volume, fc.double({ min: 0, max: 2000, noNaN: true }), (storeMl, uptake) => {
        const result = time(storeMl, uptake);
        if (!result.ok) return;
        expect(Number.isFinite(result.value.minutes)).toBe(true);
        expect(Math.abs(result.value.minutes * uptake - storeMl)).toBeLessThanOrEqual(storeMl * 1e-12 + 1e-300);
      }),
    );
  });
});
