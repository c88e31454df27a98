import { describe, expect, it } from "vitest";
import * as strengths from "../../src/core/concentration.ts";
import { SOURCE_KINDS, type Formula } from "../../src/core/derivation.ts";
import * as dilution from "../../src/core/dilution.ts";
import * as comparison from "../../src/core/dilutionStrength.ts";
import * as amounts from "../../src/core/doseAmount.ts";
import * as doses from "../../src/core/doseCompare.ts";
import * as plan from "../../src/core/dosePlan.ts";
import * as repeat from "../../src/core/doseRepeat.ts";
import * as totals from "../../src/core/doseTotals.ts";
import * as volumes from "../../src/core/drawUp.ts";
import * as syringes from "../../src/core/drawUpSyringe.ts";
import { drugFormulas } from "../../src/core/formulas/drugs.ts";
import * as infusionPlan from "../../src/core/infusionPlan.ts";
import * as rates from "../../src/core/infusionRate.ts";
import * as times from "../../src/core/infusionTime.ts";
import * as osmolar from "../../src/core/osmolar.ts";

const MODULES = [
  ...[amounts, comparison, dilution, doses, infusionPlan, osmolar, plan],
  ...[rates, repeat, strengths, syringes, times, totals, volumes],
];
/** These check or look up; they compute nothing. */
const OTHERS = ["amount", "concentration", "infusionRate", "mlPerH", "isOver", "isPerKg", "SYRINGES"];

it("every function that computes has a formula, and every formula a function", () => {
  const functions = MODULES.flatMap((module) => Object.keys(module)).filter((name) => !OTHERS.includes(name));
  expect(Object.keys(drugFormulas).sort()).toEqual(functions.sort());
});

describe("every formula can be said and traced", () => {
  const rows: readonly [string, Formula][] = Object.entries(drugFormulas);
  it.each(rows)("%s", (_name, { name, expression, source }) => {
    expect(name).toMatch(/^[a-z ]+$/);
    expect(expression).not.toBe("");
    expect(SOURCE_KINDS).toContain(source.kind);
    expect(source.reference).not.toBe("");
    // Nothing here was read in a document.
    expect(source.primaryRead).toBe(false);
  });
  it("no two are called the same", () => {
    expect(new Set(rows.map(([, { name }]) => name)).size).toBe(rows.length);
  });
});
