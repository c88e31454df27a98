import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bar, cylinderEndurance, freeGas, freeGasL, waterVolumeL } from "../../src/core/cylinder.ts";
import { fraction, lPerMin } from "../../src/core/quantities.ts";
import { checkRows } from "../tables/checkRows.ts";
import { EMPTY_ROWS, FREE_GAS_ROWS, RESERVE_ROWS } from "../tables/oxygen.ts";
import { taken } from "./taken.ts";

const endurance = (full: number, now: number, reserve: number, flow: number) =>
  cylinderEndurance({
    fullL: taken(freeGasL(full)),
    contentsL: taken(freeGasL(now)),
    reserve: taken(fraction(reserve)),
    flowLPerMin: taken(lPerMin(flow)),
  });

checkRows("free gas", FREE_GAS_ROWS, (row) => freeGas(taken(bar(row.bar)), taken(waterVolumeL(row.water))));
checkRows(
  "minutes to the reserve",
  RESERVE_ROWS,
  ({ full, now, reserve, flow }) => taken(endurance(full, now, reserve, flow)).toReserve,
);
checkRows(
  "minutes to empty",
  EMPTY_ROWS,
  ({ full, now, reserve, flow }) => taken(endurance(full, now, reserve, flow)).toEmpty,
);

it.each([
  ["bar", bar, 0, 350],
  ["water volume", waterVolumeL, 0.1, 50],
  ["free gas", freeGasL, 0, 17_500],
] as const)("the limits of %s are inside", (_name, door, min, max) => {
  const outside = { ok: false, error: { kind: "out-of-range", min, max } };
  expect(door(min)).toEqual({ ok: true, value: min });
  expect(door(max)).toEqual({ ok: true, value: max });
  expect(door(min - 0.01)).toEqual(outside);
  expect(door(max + 0.01)).toEqual(outside);
});
it("the fullest cylinder that can be entered holds what can be entered as free gas", () => {
  expect(freeGasL(freeGas(taken(bar(350)), taken(waterVolumeL(50))))).toMatchObject({ ok: true });
});
it.each([
  [460, 0],
  [0, 0],
  [460, 5e-324],
])("%d L at %d L/min has no time to give", (now, flow) => {
  expect(endurance(920, now, 0.25, flow)).toEqual({ ok: false, error: { kind: "no-flow" } });
});

describe("properties", () => {
  const litres = fc.double({ min: 0, max: 17_500, noNaN: true });
  const flows = fc.double({ min: 0.01, max: 100, noNaN: true });
  const part = fc.double({ min: 0, max: 1, noNaN: true });

  it("after the minutes to empty nothing is left, after those to the reserve it is", () => {
    fc.assert(
      fc.property(litres, litres, part, flows, (full, now, reserve, flow) => {
        const { toReserve, toEmpty } = taken(endurance(full, now, reserve, flow));
        expect(now - toEmpty * flow).toBeCloseTo(0, 6);
        expect(now - toReserve * flow).toBeCloseTo(Math.min(now, reserve * full), 6);
      }),
    );
  });
  it("is finite and in order, or refused, whatever the flow", () => {
    fc.assert(
      fc.property(litres, litres, part, fc.double({ min: 0, max: 100, noNaN: true }), (full, now, reserve, flow) => {
        const result = endurance(full, now, reserve, flow);
        if (!result.ok) return;
        expect(result.value.toReserve).toBeGreaterThanOrEqual(0);
        expect(result.value.toEmpty).toBeGreaterThanOrEqual(result.value.toReserve);
        expect(result.value.toEmpty).toBeLessThan(Infinity);
      }),
    );
  });
});
