import type { Bundle, ExtractResource, Resource } from "@medplum/fhirtypes";
import { describe, expect, it } from "vitest";
import { collectionBundle } from "../../../src/export/fhir/bundle.ts";
import { playMoves, recordedFrom, type Move } from "../randomCase.ts";
import { complaints } from "./judges.ts";

const say = (words: string, then = "affirm"): Move => ({ kind: "say", words, by: "typed", then });
const wait = (seconds: number): Move => ({ kind: "wait", seconds });

/** Every bundle here is held against the judges too. */
function bundleOf(...moves: readonly Move[]): Bundle {
  const bundle = collectionBundle(recordedFrom(playMoves(moves)), 1_900_000_000_000);
  expect(complaints(bundle)).toEqual([]);
  return bundle;
}

const ofType = <T extends Resource["resourceType"]>({ entry = [] }: Bundle, type: T) =>
  entry.flatMap(({ resource }) => (resource?.resourceType === type ? [resource as ExtractResource<T>] : []));
const resourceAt = ({ entry = [] }: Bundle, reference: string | undefined): Resource | undefined =>
  entry.find(({ fullUrl }) => fullUrl === reference)?.resource;

const seconds = (iso: string | undefined): string | undefined => iso?.slice(14, 19);

describe("concentrations", () => {
  const ready = [
    say("weight 80 kilos"),
    say("ketamine 50 milligrams per mil"),
    wait(60),
    say("ketamine 100 milligrams given"),
  ];

  it("are a Medication with its strength, and what was given from it refers to it", () => {
    const bundle = bundleOf(...ready);
    const [given] = ofType(bundle, "MedicationAdministration");
    const medication = resourceAt(bundle, given?.medicationReference?.reference);
    expect(given?.medicationReference?.display).toBe("ketamine");
    expect(medication).toMatchObject({
      resourceType: "Medication",
      status: "active",
      ingredient: [{ strength: { numerator: { value: 50, code: "mg" }, denominator: { value: 1, code: "mL" } } }],
    });
  });

  it("were affirmed at a time, which a Provenance tells since a Medication has none", () => {
    const bundle = bundleOf(...ready);
    const [medication] = ofType(bundle, "Medication");
    const told = ofType(bundle, "Provenance").filter((p) => p.occurredDateTime !== undefined);
    expect(told.map((p) => [p.target?.[0]?.reference, seconds(p.occurredDateTime)])).toEqual([
      [`urn:uuid:${medication?.id}`, "00:00"],
    ]);
  });

  it("of an infusion are the one it was set with, not one that was affirmed later", () => {
    const bundle = bundleOf(
      say("noradrenaline 4 milligrams in 250"),
      say("start noradrenaline at 5 millilitres per hour"),
      wait(60),
      say("noradrenaline 8 milligrams in 250"),
    );
    const [run] = ofType(bundle, "MedicationAdministration");
    expect(resourceAt(bundle, run?.medicationReference?.reference)).toMatchObject({
      ingredient: [{ strength: { numerator: { value: 4 } } }],
    });
    expect(ofType(bundle, "Medication")).toHaveLength(2);
  });

  it("are no longer referred to once they were struck, and stay as entered in error", () => {
    const bundle = bundleOf(...ready, { kind: "strike", at: 1 / 2 });
    expect(ofType(bundle, "Medication").map(({ status }) => status)).toEqual(["entered-in-error"]);
    const [given] = ofType(bundle, "MedicationAdministration");
    expect([given?.medicationReference, given?.medicationCodeableConcept?.text]).toEqual([undefined, "ketamine"]);
  });
});

const TUBE = [say("tube in"), say("end tidal 38"), say("tube confirmed")];

describe("steps", () => {
  // [said, the code of the value, in UCUM]. The codes are those of stepValues.ts, with their source there.
  it.each([
    ["tube eight point zero", "tube", "8 mm", []],
    ["depth 23", "tubeDepth", "23 cm", TUBE],
    ["tidal volume 480", "20112-9", "480 mL", TUBE],
    ["peep five", "20077-4", "5 cm[H2O]", TUBE],
  ])("%s is an Observation, from the answer it was said in", (words, code, shown, before) => {
    const bundle = bundleOf(...before, say(words));
    const values = ofType(bundle, "Observation").filter((o) => /^Said for the step/u.test(o.code?.text ?? ""));
    const told = values.map((o) => [o.code?.coding?.[0]?.code, `${o.valueQuantity?.value} ${o.valueQuantity?.code}`]);
    expect(told).toEqual([[code, shown]]);
    expect(resourceAt(bundle, values[0]?.derivedFrom?.[0]?.reference)?.resourceType).toBe("QuestionnaireResponse");
  });

  it("that are passed over and about drugs are drugs not given, those of the rescue and after the tube too", () => {
    const bundle = bundleOf(
      say("start rescue"),
      // Head up, pressure, carbon dioxide; then the osmotic drug and the deep sedation.
      ...["done", "not needed", "not needed", "not needed no time", "not needed"].map((words) => say(words)),
      ...TUBE,
      say("sedation not needed"),
    );
    const told = ofType(bundle, "MedicationAdministration").map((m) => [
      m.status,
      m.medicationCodeableConcept?.text,
      m.statusReason?.[0]?.text,
    ]);
    expect(told).toEqual([
      ["not-done", "rescue osmotic", "not needed: no time"],
      ["not-done", "deep sedation", "not needed"],
      ["not-done", "sedation running", "not needed"],
    ]);
  });

  it("hold the last answer alone; one that was struck stands by itself, in error", () => {
    const bundle = bundleOf(say("suction later"), say("suction ready"), say("capnograph ready"), say("disregard"));
    const told = ofType(bundle, "QuestionnaireResponse").map(({ status, item = [] }) => [
      status,
      item.flatMap((list) => list.item ?? list).map((one) => [one.linkId, one.answer?.[0]?.valueCoding?.code]),
    ]);
    expect(told).toEqual([
      ["in-progress", [["suction", "done"]]],
      ["entered-in-error", [["capnograph", "done"]]],
    ]);
  });
});

describe("the rescue", () => {
  it("is a Procedure from its start to its end, and its list is part of it", () => {
    const bundle = bundleOf(say("start rescue"), say("done"), wait(120), say("end rescue"));
    const [rescue] = ofType(bundle, "Procedure");
    expect([rescue?.status, seconds(rescue?.performedPeriod?.end)]).toEqual(["completed", "02:00"]);
    const [list] = ofType(bundle, "QuestionnaireResponse");
    expect([list?.status, list?.partOf?.[0]?.reference]).toEqual(["completed", `urn:uuid:${rescue?.id}`]);
  });

  it("runs until no herniation is said; a start that was struck is one in error", () => {
    const ended = bundleOf(say("start rescue"), wait(60), say("no herniation"));
    expect(ofType(ended, "Procedure").map(({ status }) => status)).toEqual(["completed"]);
    const struck = bundleOf(say("start rescue"), say("disregard"));
    expect(ofType(struck, "Procedure").map(({ status }) => status)).toEqual(["entered-in-error"]);
  });
});

describe("the course", () => {
  const observed = (bundle: Bundle, code: string) =>
    ofType(bundle, "Observation").filter((o) => o.code?.coding?.[0]?.code === code);

  it("has its phases in order, each until the next", () => {
    const bundle = bundleOf(
      say("phase prepare"),
      wait(60),
      say("blade in"),
      wait(30),
      say("tube in"),
      wait(30),
      say("tube confirmed"),
    );
    const told = observed(bundle, "phase").map(({ valueCodeableConcept, effectivePeriod }) =>
      [valueCodeableConcept?.text, seconds(effectivePeriod?.start), seconds(effectivePeriod?.end)].join(" "),
    );
    expect(told).toEqual(["prepare 00:00 01:00", "intubate 01:00 02:00", "settle 02:00 "]);
  });

  it("has clocks that were called, and the call of a failed airway; struck ones in error", () => {
    const moves = [say("hyperventilating"), wait(60), say("stop hyperventilation"), say("failed airway")];
    const [clock] = observed(bundleOf(...moves), "hyperventilation");
    expect([seconds(clock?.effectivePeriod?.start), seconds(clock?.effectivePeriod?.end)]).toEqual(["00:00", "01:00"]);
    const failed = (bundle: Bundle) => observed(bundle, "failedAirway").map((o) => [o.status, o.valueBoolean]);
    expect(failed(bundleOf(...moves))).toEqual([["final", true]]);
    expect(failed(bundleOf(...moves, say("disregard")))).toEqual([["entered-in-error", true]]);
  });
});

describe("what was put right", () => {
  const activities = (bundle: Bundle) =>
    ofType(bundle, "Provenance")
      .filter(({ activity }) => ["struck", "corrected"].includes(activity?.coding?.[0]?.code ?? ""))
      .map(({ activity, target = [], entity = [], occurredDateTime }) => ({
        activity: activity?.text,
        at: seconds(occurredDateTime),
        of: target.map(({ reference }) => resourceAt(bundle, reference)),
        was: resourceAt(bundle, entity[0]?.what?.reference),
      }));

  it("later takes the place of the struck value: a Provenance says which one, and when", () => {
    const bundle = bundleOf(say("icp five zero"), wait(180), say("correct the icp of fifty to one five"));
    const told = activities(bundle).map(({ activity, at, of, was }) => [
      activity,
      at,
      of.map((o) => o?.resourceType === "Observation" && [o.status, o.valueQuantity?.value]),
      was?.resourceType === "Observation" && was.valueQuantity?.value,
    ]);
    expect(told).toEqual([
      ["put right later", "03:00", [["final", 15]], 50],
      ["struck out: corrected", "03:00", [["entered-in-error", 50]], false],
    ]);
  });

  it("at once is struck, and a Provenance says so of a pressure as one panel", () => {
    const told = activities(bundleOf(say("one twenty over eighty"), say("disregard")));
    expect(told.map(({ activity, of }) => [activity, of.map((o) => o?.resourceType)])).toEqual([
      ["struck out: disregarded", ["Observation"]],
    ]);
  });
});
