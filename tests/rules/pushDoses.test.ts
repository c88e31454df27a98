import { describe, expect, it } from "vitest";
import type { DoseUnit } from "../../src/core/doseUnits.ts";
import type { NewFact } from "../../src/log/facts.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import type { Drug, DrugClass, Protocol } from "../../src/protocol/protocol.ts";
import { pushDoses } from "../../src/rules/pushDoses.ts";
import { CaseBuilder } from "../log/caseBuilder.ts";

type Affirmed = readonly [drugId: string, amount: number, unit: DoseUnit, volumeMl: number, drugClass?: DrugClass];

const affirmed = ([drugId, amount, unit, volumeMl, drugClass = "vasopressor"]: Affirmed): NewFact => ({
  type: "strength.affirmed",
  drugId,
  drugClass,
  strength: { amount, unit, volumeMl },
  heard: "as said",
  by: "typed",
});

/** "drug amount unit in millilitres" of each push dose that lies ready. */
const readyIn = (c: CaseBuilder, protocol: Protocol = defaultProtocol): readonly string[] =>
  pushDoses(c.state, protocol, c.nowMs).map(({ medicine, drawnUp: { strength } }) =>
    [medicine.id, strength.amount, strength.unit, "in", strength.volumeMl].join(" "),
  );

const after = (...strengths: readonly Affirmed[]): CaseBuilder => {
  const c = new CaseBuilder();
  c.add(...strengths.map(affirmed));
  return c;
};

const PUSH: Affirmed = ["adrenaline", 10, "mcg", 1];
const SYRINGE: Affirmed = ["adrenaline", 100, "mcg", 10];
const BAG: Affirmed = ["adrenaline", 1, "mg", 250];

describe("a push dose lies ready", () => {
  const ROWS: readonly (readonly [string, readonly Affirmed[], readonly string[]])[] = [
    ["a syringe", [SYRINGE], ["adrenaline 100 mcg in 10"]],
    ["a strength in each millilitre", [PUSH], ["adrenaline 10 mcg in 1"]],
    ["at the limit of the protocol's step", [["phenylephrine", 10, "mg", 100]], ["phenylephrine 10 mg in 100"]],
    ["over that limit it is a bag", [["phenylephrine", 10, "mg", 101]], []],
    ["a bag", [BAG], []],
    ["a bag does not hide the syringe", [SYRINGE, BAG], ["adrenaline 100 mcg in 10"]],
    ["nor the syringe the bag", [BAG, SYRINGE], ["adrenaline 100 mcg in 10"]],
    ["of two syringes the newer counts", [SYRINGE, PUSH], ["adrenaline 10 mcg in 1"]],
    ["a pressor without a dose at once", [["noradrenaline", 0.8, "mg", 50]], []],
    ["a drug of another class", [["ketamine", 500, "mg", 10, "induction"]], []],
    [
      "two drugs",
      [SYRINGE, ["phenylephrine", 10, "mg", 100]],
      ["adrenaline 100 mcg in 10", "phenylephrine 10 mg in 100"],
    ],
    ["a drug that the protocol does not have", [["invented", 1, "mg", 10]], []],
  ];
  it.each(ROWS)("%s", (_what, strengths, ready) => expect(readyIn(after(...strengths))).toEqual(ready));

  it("not once its strength is struck", () => {
    const c = new CaseBuilder();
    const [syringe] = c.add(affirmed(SYRINGE), affirmed(BAG));
    c.strike(syringe ?? "");
    expect(readyIn(c)).toEqual([]);
  });

  it("not for a child, for whom the protocol has none", () => {
    const c = after(SYRINGE);
    c.patient({ ageA: 6 });
    expect(readyIn(c)).toEqual([]);
  });
});

describe("the limit is the protocol's", () => {
  type By = NonNullable<Protocol["groups"][number]["steps"][number]["satisfiedBy"]>;
  const answeredBy = (...all: readonly By[]): Protocol => ({
    ...defaultProtocol,
    groups: defaultProtocol.groups.slice(0, 1).map((group) => ({
      ...group,
      steps: all.map((satisfiedBy, i) => ({ ...group.steps[0]!, id: `step${i}`, satisfiedBy })),
    })),
  });
  const upTo = (mostMl: number): By => ({ kind: "strength-affirmed", drugClass: "vasopressor", mostMl });

  it.each([
    ["none: every strength counts", answeredBy({ kind: "map-at-target" }), 1],
    ["none for this class", answeredBy({ kind: "strength-affirmed", drugClass: "muscleRelaxant", mostMl: 9 }), 1],
    ["none at the step", answeredBy({ kind: "strength-affirmed", drugClass: "vasopressor" }), 1],
    ["that of the step", answeredBy(upTo(249)), 0],
    ["that of the step, with room", answeredBy(upTo(250)), 1],
    ["the strictest of two", answeredBy(upTo(250), upTo(100)), 0],
  ])("%s", (_what, protocol, count) => expect(readyIn(after(BAG), protocol)).toHaveLength(count));
});

describe("a dose whose size is not known yet", () => {
  const perKg = ({ doses, ...drug }: Drug): Drug => ({
    ...drug,
    doses: doses.map((dose) => ({ ...dose, per: "kg", weight: "actual" })),
  });
  const byWeight: Protocol = { ...defaultProtocol, drugs: defaultProtocol.drugs.map(perKg) };

  it("is drawn up for want of a weight", () => expect(readyIn(after(SYRINGE), byWeight)).toHaveLength(1));

  it("is drawn up while the weight is in question, and a drug without a dose still is not", () => {
    const c = after(SYRINGE, ["noradrenaline", 0.8, "mg", 50]);
    c.add({
      type: "question.asked",
      question: {
        id: "q",
        reason: "implausible",
        about: ["weight"],
        prompt: "Weight?",
        heard: "weight eight hundred",
        by: "typed",
        askedAtMs: 0,
        strikes: [],
        candidates: [],
      },
    });
    expect(readyIn(c)).toEqual(["adrenaline 100 mcg in 10"]);
  });
});
