import { describe, expect, it } from "vitest";
import * as bounds from "../../../src/core/cppRange.ts";
import { SOURCE_KINDS, type Formula } from "../../../src/core/derivation.ts";
import { pressureFormulas } from "../../../src/core/formulas/pressure.ts";
import * as hydrostatic from "../../../src/core/hydrostatic.ts";
import * as levelled from "../../../src/core/levelledCpp.ts";
import * as means from "../../../src/core/meanPressure.ts";
import * as pressures from "../../../src/core/pressure.ts";
import * as indices from "../../../src/core/shockIndex.ts";

const MODULES = [bounds, hydrostatic, levelled, means, pressures, indices];
/** These check what comes in; they compute nothing. */
const DOORS = ["verticalCm", "torsoCm", "tiltDeg"];

it("every function that computes has a formula, and every formula a function", () => {
  const functions = MODULES.flatMap((module) => Object.keys(module)).filter((name) => !DOORS.includes(name));
  expect(Object.keys(pressureFormulas).sort()).toEqual(functions.sort());
});

describe("every formula can be said and traced", () => {
  const rows: readonly [string, Formula][] = Object.entries(pressureFormulas);
  it.each(rows)("%s", (_name, { name, expression, source }) => {
    expect(name).toMatch(/^[A-Za-z -]+$/);
    expect(expression.length).toBeGreaterThan(0);
    expect(SOURCE_KINDS).toContain(source.kind);
    expect(source.reference.length).toBeGreaterThan(0);
    const unread = source.kind === "memory" || source.kind === "common-practice";
    expect(source.primaryRead).toBe(!unread);
  });

  it("no two are called the same", () => {
    const names = rows.map(([, { name }]) => name);
    expect(new Set(names).size).toBe(names.length);
  });
});
