import { describe, expect, it } from "vitest";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import { planDrug } from "../../src/rules/drugPlan.ts";
import { explainDose } from "../../src/rules/explainDose.ts";
import { played, T0_MS } from "../app/playedState.ts";

const protocolWith = (change: Partial<Protocol>): Protocol => ({ ...defaultProtocol, ...change });
const { permissions, region } = defaultProtocol;
const allowed = { ...permissions.mannitolBelowSbpTarget, value: true };

describe("what bars a drug is the protocol's", () => {
  it.each([
    [
      "andexanet alfa",
      "where it is not sold",
      protocolWith({ region: { ...region, drugNames: "us" } }),
      [],
      "not-in-region",
    ],
    [
      "mannitol20",
      "under the systolic target",
      defaultProtocol,
      ["weight eighty eight zero kilos", "one oh five over sixty"],
      "pressure-too-low",
    ],
    ["lidocaine", "in shock", defaultProtocol, ["one hundred over sixty", "rate one ten"], "omitted-in-shock"],
    ["atropine", "an adult has no dose of", defaultProtocol, [], "no-dose"],
    ["noradrenaline", "runs by rate alone", defaultProtocol, [], "infusion-only"],
    ["aspirin", "not in the protocol", defaultProtocol, [], "no-medicine"],
  ] as const)("%s, %s", (id, _why, protocol, lines, kind) => {
    const plan = planDrug(played(lines), protocol, id, T0_MS);
    expect(plan).toMatchObject({ ok: false, error: { kind } });
  });

  it("mannitol is given under the systolic target where the protocol permits it", () => {
    const protocol = protocolWith({ permissions: { ...permissions, mannitolBelowSbpTarget: allowed } });
    const state = played(["weight eighty eight zero kilos", "one oh five over sixty"]);
    expect(planDrug(state, protocol, "mannitol20", T0_MS)).toMatchObject({ ok: true });
  });

  it("a bleed asks for more pressure, but does not bar mannitol over the floor of the age", () => {
    const state = played(["weight eighty eight zero kilos", "cause bleed", "one twenty over seventy"]);
    expect(planDrug(state, defaultProtocol, "mannitol20", T0_MS)).toMatchObject({ ok: true });
  });

  it("the name is the region's", () => {
    const state = played(["weight eighty eight zero kilos"]);
    const names = [defaultProtocol, protocolWith({ region: { ...region, drugNames: "us" } })].map((protocol) => {
      const plan = planDrug(state, protocol, "suxamethonium", T0_MS);
      return plan.ok ? plan.value.medicine.name : plan.error.kind;
    });
    expect(names).toEqual(["suxamethonium", "succinylcholine"]);
  });
});

/** Worked by hand, with the reference patients of common teaching: 178 cm, 80 kg, and a child of six years. */
const ADULT = ["height one seventy eight centimetres", "sex male", "weight eighty eight zero kilos"];
const DOSES: readonly (readonly [string, readonly string[], number, string])[] = [
  ["ketamine", ADULT, 109.77, "1.5 × 73.18"],
  ["ketamine", [...ADULT, "one twenty over sixty", "rate one ten"], 54.885, "0.75 × 73.18, in shock"],
  ["rocuronium", ADULT, 87.816, "1.2 × 73.18"],
  ["suxamethonium", ADULT, 120, "1.5 × 80"],
  ["levetiracetam", ADULT, 4500, "60 × 80 = 4800, capped"],
  ["mannitol20", ADULT, 40, "0.5 g × 80"],
  ["ketamine", ["age six"], 37.5, "1.5 × 25"],
  ["rocuronium", ["age six"], 30, "1.2 × 25"],
];

describe("doses worked by hand", () => {
  it.each(DOSES)("%s after %j is %d: %s", (id, lines, expected) => {
    const plan = planDrug(played(lines), defaultProtocol, id, T0_MS);
    expect(plan.ok && plan.value.planned.usual.value).toBeCloseTo(expected, 1);
  });
});

/** A file may name the purpose in any words: only the mark counts. */
describe("once the tube is confirmed, a dose that is marked for then comes first", () => {
  const reworded: Protocol = {
    ...defaultProtocol,
    drugs: defaultProtocol.drugs.map(({ doses, ...drug }) => ({
      ...drug,
      doses: doses.map((dose) => ({ ...dose, purpose: dose.purpose.replace("after intubation", "once asleep") })),
    })),
  };
  const unmarked: Protocol = {
    ...defaultProtocol,
    drugs: defaultProtocol.drugs.map(({ doses, ...drug }) => ({
      ...drug,
      doses: doses.map(({ afterTube: _mark, ...dose }) => dose),
    })),
  };
  const BEFORE = ["weight eighty eight zero kilos", "height one seventy eight centimetres", "sex male"];
  const AFTER = [...BEFORE, "blade in", "tube in", "tube confirmed"];

  it.each([
    ["before", defaultProtocol, BEFORE, "blunting"],
    ["after", defaultProtocol, AFTER, "painRelief"],
    ["after, reworded", reworded, AFTER, "painRelief"],
    ["after, not marked", unmarked, AFTER, "blunting"],
  ] as const)("fentanyl, %s", (_when, protocol, lines, doseId) => {
    const plan = planDrug(played(lines), protocol, "fentanyl", T0_MS);
    expect(plan).toMatchObject({ ok: true, value: { dose: { id: doseId } } });
  });
});

describe("the reason of a dose is whole", () => {
  it("names the entry, the weight with its formula, and the shock that changed it", () => {
    const state = played(["height one seventy eight centimetres", "sex male", "one twenty over sixty", "rate one ten"]);
    const plan = planDrug(state, defaultProtocol, "ketamine", T0_MS);
    if (!plan.ok) throw new Error(plan.error.kind);
    const why = explainDose(state, plan.value);
    if (why.kind !== "derived") throw new Error("not derived");
    const { inputs, parts, result } = why.derivation;
    expect(inputs.map((i) => [i.name, i.kind, i.path])).toEqual([
      ["dose", "protocol", "drugs[0].doses[0].shock.usual"],
      ["ideal weight", "computed", undefined],
    ]);
    expect(inputs[0]?.source?.reference).not.toBe("");
    expect(parts.map((part) => part.formula.name)).toEqual(["ideal weight", "shock index"]);
    expect(result.kind).toBe("computed");
  });

  it("a guess stays one from the weight to the dose", () => {
    const state = played(["age six"]);
    const plan = planDrug(state, defaultProtocol, "rocuronium", T0_MS);
    if (!plan.ok) throw new Error(plan.error.kind);
    const why = explainDose(state, plan.value);
    expect(why).toMatchObject({ kind: "derived", derivation: { result: { kind: "estimated" } } });
    expect(plan.value.planned.kind).toBe("estimated");
  });
});
