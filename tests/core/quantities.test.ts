import { describe, expect, it } from "vitest";
import { torsoCm, tiltDeg, verticalCm } from "../../src/core/hydrostatic.ts";
import { mmHg } from "../../src/core/mmHg.ts";
import * as doors from "../../src/core/quantities.ts";
import { quantityOf, type QuantityError } from "../../src/core/quantity.ts";
import type { Result } from "../../src/core/result.ts";
import { spanOf, VITALS, type VitalCode } from "../../src/core/vitals.ts";
import { vitalQuantity } from "../../src/core/vitalQuantity.ts";

type Door = (n: number) => Result<number, QuantityError>;

/** Each door with its first and last value that it lets in. */
const DOORS: readonly [string, Door, number, number][] = [
  ["mmHg", mmHg, 0, 300],
  ["perMin", doors.perMin, 2, 260],
  ["percent", doors.percent, 0, 100],
  ["fraction", doors.fraction, 0, 1],
  ["kg", doors.kg, 2, 300],
  ["cm", doors.cm, 40, 230],
  ["mm", doors.mm, 1, 9],
  ["years", doors.years, 0, 110],
  ["cel", doors.cel, 25, 43],
  ["mmolPerL", doors.mmolPerL, 1, 50],
  ["score", doors.score, 0, 15],
  ["kPa", doors.kPa, 0, 110],
  ["cmH2O", doors.cmH2O, 0, 150],
  ["ml", doors.ml, 0, 20_000],
  ["l", doors.l, 0, 20],
  ["lPerMin", doors.lPerMin, 0, 100],
  ["mlPerMin", doors.mlPerMin, 0, 2000],
  ["mlPerKg", doors.mlPerKg, 0, 100],
  ["minutes", doors.minutes, 0, 1440],
  ["seconds", doors.seconds, 0, 86_400],
  ["verticalCm", verticalCm, -100, 100],
  ["torsoCm", torsoCm, 0, 100],
  ["tiltDeg", tiltDeg, -45, 90],
];

describe("every door lets in its limits and nothing beyond", () => {
  it.each(DOORS)("%s", (_name, door, min, max) => {
    const refused = { ok: false, error: { kind: "out-of-range", min, max } };
    expect(door(min)).toEqual({ ok: true, value: min });
    expect(door(max)).toEqual({ ok: true, value: max });
    expect(door(min - 1e-9)).toEqual(refused);
    expect(door(max + 1e-9)).toEqual(refused);
    for (const n of [NaN, Infinity, -Infinity]) expect(door(n)).toEqual({ ok: false, error: { kind: "not-a-number" } });
  });

  it("none is left out", () => {
    const tried = DOORS.map(([name]) => name);
    expect(Object.keys(doors).filter((name) => !tried.includes(name))).toEqual([]);
  });
});

it("a height in metres is no height, a percentage no fraction", () => {
  expect([doors.cm(1.78), doors.fraction(21)].map(({ ok }) => ok)).toEqual([false, false]);
});

it("a door that lets in one value lets in that one", () => {
  const door = quantityOf<"one">({ min: 1, max: 1 });
  expect([door(1).ok, door(0).ok, door(2).ok]).toEqual([true, false, false]);
});

describe("a vital's own door has the limits of its row", () => {
  it.each(Object.keys(VITALS) as VitalCode[])("%s", (code) => {
    const { min, max } = VITALS[code].limits;
    expect(vitalQuantity(code, min)).toEqual({ ok: true, value: min });
    expect(vitalQuantity(code, max)).toEqual({ ok: true, value: max });
    expect(vitalQuantity(code, max + 0.1)).toEqual({ ok: false, error: { kind: "out-of-range", min, max } });
    expect(vitalQuantity(code, NaN)).toEqual({ ok: false, error: { kind: "not-a-number" } });
  });
});

it("the span of a unit holds every vital stored in it, and no more", () => {
  expect(spanOf("mm[Hg]")).toEqual({ min: 0, max: 300 });
  expect(spanOf("{score}")).toEqual({ min: 1, max: 6 });
  expect(spanOf("a")).toEqual(VITALS.age.limits);
});
