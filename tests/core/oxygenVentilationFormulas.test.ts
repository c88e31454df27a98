import { describe, expect, it } from "vitest";
import * as alveolarGas from "../../src/core/alveolarGas.ts";
import * as apnoeaStore from "../../src/core/apnoeaStore.ts";
import * as carbonDioxide from "../../src/core/carbonDioxide.ts";
import * as cerebralFlow from "../../src/core/cerebralFlow.ts";
import * as cylinder from "../../src/core/cylinder.ts";
import { SOURCE_KINDS } from "../../src/core/derivation.ts";
import * as dissociation from "../../src/core/dissociation.ts";
import { oxygenFormulas } from "../../src/core/formulas/oxygen.ts";
import { ventilationFormulas } from "../../src/core/formulas/ventilation.ts";
import * as rateForCo2 from "../../src/core/rateForCo2.ts";
import * as ventilation from "../../src/core/ventilation.ts";

/** They check what is entered and compute nothing. */
const DOORS = ["inspiredFraction", "barometricMmHg", "paco2", "pctPerMmHg", "bar", "waterVolumeL", "freeGasL"];

const computing = (...modules: readonly object[]): readonly string[] =>
  modules.flatMap((module) => Object.keys(module)).filter((name) => !DOORS.includes(name));

describe("every computing function says how it works", () => {
  it("oxygen", () => {
    const names = computing(alveolarGas, apnoeaStore, cylinder, dissociation);
    expect(Object.keys(oxygenFormulas).sort()).toEqual([...names].sort());
  });
  it("ventilation", () => {
    const names = computing(carbonDioxide, cerebralFlow, rateForCo2, ventilation);
    expect(Object.keys(ventilationFormulas).sort()).toEqual([...names].sort());
  });
});

describe.each(Object.entries({ ...oxygenFormulas, ...ventilationFormulas }))("%s", (_function, formula) => {
  it("has a name to say, an expression and a source", () => {
    expect(formula.name).toMatch(/^[a-zA-Z][A-Za-z0-9 ,]+$/);
    expect(formula.expression).toMatch(/[×/−+]/);
    expect(formula.source.reference).not.toBe("");
    expect(SOURCE_KINDS).toContain(formula.source.kind);
  });
  it("claims to be read only where it was", () => {
    expect(formula.source.primaryRead).toBe(formula.source.reference.includes("doi:10.1152/jappl.1979.46.3.599"));
  });
});

it("names are not shared: each says which result is meant", () => {
  const names = Object.values({ ...oxygenFormulas, ...ventilationFormulas }).map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
});
