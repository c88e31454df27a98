import { describe, expect, it } from "vitest";
import type { NewFact } from "../../src/log/facts.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import { cylinderEnd } from "../../src/rules/cylinderEnd.ts";
import { infusionEnds } from "../../src/rules/infusionEnd.ts";
import { osmoticEnds } from "../../src/rules/osmoticEnd.ts";
import { planDrug } from "../../src/rules/drugPlan.ts";
import { CaseBuilder } from "../log/caseBuilder.ts";

const said = { heard: "as said", by: "typed" } as const;
const MIN = 60_000;

const strength = (drugId: string, amount: number, volumeMl: number): NewFact => ({
  type: "strength.affirmed",
  drugId,
  drugClass: "vasopressor",
  strength: { amount, unit: "mg", volumeMl },
  ...said,
});
const runs = (mlPerH: number | undefined, value = 0.1, weightKg?: number): NewFact => ({
  type: "infusion.set",
  drugId: "noradrenaline",
  drugClass: "vasopressor",
  rate: { value, unit: "mcg/kg/min" },
  ...(weightKg !== undefined && { weightKg }),
  ...(mlPerH !== undefined && { mlPerH }),
  ...said,
});

/** Minutes from now until the bag is empty, and what is left in it. */
function left(c: CaseBuilder): readonly (readonly [number, number])[] {
  return infusionEnds(c.state, defaultProtocol, c.nowMs).map((end) => [
    Math.round((end.atMs - c.nowMs) / MIN),
    Math.round(end.remainingMl),
  ]);
}

describe("when a bag is empty", () => {
  it("250 mL at 30 mL/h last 500 minutes", () => {
    const c = new CaseBuilder();
    c.add(strength("noradrenaline", 4, 250), runs(30));
    expect(left(c)).toEqual([[500, 250]]);
    expect(left(c.at(3600))).toEqual([[440, 220]]);
  });

  it("changes of the rate and stops are taken into account", () => {
    const c = new CaseBuilder();
    c.add(strength("noradrenaline", 4, 250), runs(30));
    c.at(3600).add(runs(60, 0.2));
    // 30 mL in the first hour, 30 in the next half.
    expect(left(c.at(5400))).toEqual([[190, 190]]);
    c.add(runs(0, 0));
    expect(left(c.at(9000))).toEqual([]);
    c.add(runs(30));
    expect(left(c)).toEqual([[380, 190]]);
  });

  it("a strength affirmed anew is a new bag", () => {
    const c = new CaseBuilder();
    c.add(strength("noradrenaline", 4, 250), runs(30));
    c.at(3600).add(strength("noradrenaline", 4, 250));
    expect(left(c.at(7200))).toEqual([[440, 220]]);
  });

  it("a strength that comes later gives the pump its rate by the weight of the order", () => {
    const c = new CaseBuilder();
    c.add(runs(undefined, 0.1, 80));
    expect(left(c)).toEqual([]);
    c.add(strength("noradrenaline", 4, 250));
    expect(left(c)).toEqual([[500, 250]]);
  });

  it("is in the past once it should be empty, and undone with its fact", () => {
    const c = new CaseBuilder();
    const [, start] = c.add(strength("noradrenaline", 4, 50), runs(60));
    expect(left(c.at(3600))).toEqual([[-10, 0]]);
    c.strike(start ?? "");
    expect(left(c)).toEqual([]);
  });

  it("no bag is known of a strength in each millilitre, nor without a strength", () => {
    const c = new CaseBuilder();
    c.add(runs(30));
    expect(left(c)).toEqual([]);
    c.add(strength("noradrenaline", 0.016, 1));
    expect(left(c)).toEqual([]);
  });
});

describe("when an osmotic agent is in", () => {
  it("from the start, over the time of the protocol; a struck dose has no end", () => {
    const c = new CaseBuilder().at(60);
    const given: NewFact = {
      type: "drug.given",
      drugId: "sodiumChloride3",
      drugClass: "osmotic",
      doseId: "adult",
      amount: { value: 250, unit: "mL" },
      ...said,
    };
    const [id] = c.add(given);
    expect(osmoticEnds(c.state, defaultProtocol)).toEqual([
      {
        drugId: "sodiumChloride3",
        name: "three percent saline",
        startedAtMs: MIN,
        earliestAtMs: 11 * MIN,
        atMs: 21 * MIN,
      },
    ]);
    c.strike(id ?? "");
    expect(osmoticEnds(c.state, defaultProtocol)).toEqual([]);
  });

  it("a drug that is no osmotic agent has none", () => {
    const c = new CaseBuilder();
    c.add({
      type: "drug.given",
      drugId: "ketamine",
      drugClass: "induction",
      doseId: "adultInduction",
      amount: { value: 60, unit: "mg" },
      ...said,
    });
    expect(osmoticEnds(c.state, defaultProtocol)).toEqual([]);
  });
});

describe("how long a cylinder lasts", () => {
  it.each([
    // 600 L at 15, a quarter of 600 kept: 450 / 15 and 600 / 15.
    [0, 600, 30, 40],
    [10, 450, 20, 30],
    [35, 75, 0, 5],
    [50, 0, 0, 0],
  ])(
    "after %d minutes it holds %d L: %d to the reserve, %d to empty",
    (minutes, contentsL, toReserveMin, toEmptyMin) => {
      const c = new CaseBuilder();
      c.add({ type: "cylinder.recorded", contentsL: 600, fullL: 600, flowLPerMin: 15, ...said });
      expect(cylinderEnd(c.state, defaultProtocol, minutes * MIN)).toEqual({
        contentsL,
        fullL: 600,
        flowLPerMin: 15,
        recordedAtMs: 0,
        toReserveMin,
        toEmptyMin,
      });
    },
  );

  it("is not known before one was recorded, and not after it was struck", () => {
    const c = new CaseBuilder();
    expect(cylinderEnd(c.state, defaultProtocol, 0)).toBeUndefined();
    const [id] = c.add({ type: "cylinder.recorded", contentsL: 600, fullL: 600, flowLPerMin: 15, ...said });
    c.strike(id ?? "");
    expect(cylinderEnd(c.state, defaultProtocol, 0)).toBeUndefined();
  });
});

describe("which of several doses is meant", () => {
  it("once the tube is confirmed, the one for after it", () => {
    const c = new CaseBuilder();
    c.say({ weight: 80 });
    c.say({ height: 178 });
    c.add({ type: "sex.recorded", readingId: "r", sex: "male", ...said });
    const purpose = (): string | undefined => {
      const plan = planDrug(c.state, defaultProtocol, "fentanyl", c.nowMs);
      return plan.ok ? plan.value.dose.id : plan.error.kind;
    };
    expect(purpose()).toBe("blunting");
    const [id] = c.add({ type: "airway.event", event: "tubeConfirmed", ...said });
    expect(purpose()).toBe("painRelief");
    c.strike(id ?? "");
    expect(purpose()).toBe("blunting");
  });
});
