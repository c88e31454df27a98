import { describe, expect, it } from "vitest";
import type { NewFact } from "../../src/log/facts.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import { pressureOffer } from "../../src/rules/pressureOffer.ts";
import { Ward } from "./alerts/ward.ts";

const said = { heard: "as said", by: "typed" } as const;

const affirmed = (drugId: string, mcg: number, volumeMl: number): NewFact => ({
  type: "strength.affirmed",
  drugId,
  drugClass: "vasopressor",
  strength: { amount: mcg, unit: "mcg", volumeMl },
  ...said,
});
const given = (drugId: string, mcg: number): NewFact => ({
  type: "drug.given",
  drugId,
  drugClass: "vasopressor",
  doseId: "pushDose",
  amount: { value: mcg, unit: "mcg" },
  ...said,
});
const runs = (value: number, drugId = "noradrenaline"): NewFact => ({
  type: "infusion.set",
  drugId,
  drugClass: "vasopressor",
  rate: { value, unit: "mcg/kg/min" },
  ...said,
});

const SYRINGE = affirmed("adrenaline", 100, 10);
const BAG = affirmed("adrenaline", 1000, 250);

/** What is offered when the mean falls under its target, this long after these facts. */
function offered(facts: readonly NewFact[], laterS = 0) {
  const ward = new Ward();
  ward.say({ map: 95 });
  ward.round();
  ward.add({ type: "phase.entered", phase: "prepare", ...said }, ...facts);
  const before = ward.state;
  ward.at(laterS).say({ map: 70 });
  const announced = ward.round();
  expect(announced.map(({ alertId }) => alertId)).toContain("mapLow");
  return pressureOffer({ before, after: ward.state }, defaultProtocol, announced, ward.nowMs);
}

const VOLUME = { kind: "volume" };
const NORADRENALINE = (value: number) => ({
  kind: "infusion",
  drug: "noradrenaline",
  rate: { value, unit: "mcg/kg/min" },
});

describe("beside a falling pressure", () => {
  // The bundled protocol: a push dose again after one minute; noradrenaline up to 1 mcg/kg/min.
  it.each<[string, readonly NewFact[], number, unknown]>([
    ["a push dose that is drawn up", [SYRINGE], 0, { kind: "pushDose", drug: "adrenaline" }],
    [
      "the one drawn up last",
      [SYRINGE, affirmed("phenylephrine", 10_000, 100)],
      0,
      { kind: "pushDose", drug: "phenylephrine" },
    ],
    ["a push dose before the infusion that runs", [SYRINGE, runs(0.1)], 0, { kind: "pushDose", drug: "adrenaline" }],
    ["no push dose until its interval has passed", [SYRINGE, given("adrenaline", 10)], 59, VOLUME],
    ["a push dose again after it", [SYRINGE, given("adrenaline", 10)], 60, { kind: "pushDose", drug: "adrenaline" }],
    ["in the interval, the infusion", [SYRINGE, given("adrenaline", 10), runs(0.1)], 59, NORADRENALINE(0.1)],
    ["an infusion with room", [runs(0.99)], 0, NORADRENALINE(0.99)],
    ["volume, where it runs at its highest rate", [runs(1)], 0, VOLUME],
    ["volume, where it was stopped", [runs(0.1), runs(0)], 0, VOLUME],
    ["volume, where nothing is ready", [], 0, VOLUME],
    ["no push dose out of a bag", [BAG], 0, VOLUME],
    [
      "the bag's infusion, where it runs",
      [BAG, runs(0.1, "adrenaline")],
      0,
      { ...NORADRENALINE(0.1), drug: "adrenaline" },
    ],
    ["the syringe, though a bag was affirmed since", [SYRINGE, BAG], 0, { kind: "pushDose", drug: "adrenaline" }],
  ])("%s", (_what, facts, laterS, offer) => expect(offered(facts, laterS)).toEqual(offer));
});

it("offers nothing while the patient is first looked at, nor where no pressure was announced", () => {
  const ward = new Ward();
  ward.add(SYRINGE);
  ward.say({ map: 70 });
  const announced = ward.round();
  expect(
    pressureOffer({ before: ward.state, after: ward.state }, defaultProtocol, announced, ward.nowMs),
  ).toBeUndefined();
  ward.add({ type: "phase.entered", phase: "prepare", ...said });
  expect(pressureOffer({ before: ward.state, after: ward.state }, defaultProtocol, [], ward.nowMs)).toBeUndefined();
});
