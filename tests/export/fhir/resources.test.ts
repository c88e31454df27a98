import type { Bundle, ExtractResource, Resource } from "@medplum/fhirtypes";
import { describe, expect, it } from "vitest";
import { collectionBundle, documentBundle } from "../../../src/export/fhir/bundle.ts";
import { resourceId } from "../../../src/export/fhir/resourceId.ts";
import { playMoves, recordedFrom, type Move } from "../randomCase.ts";

const NOW_MS = 1_900_000_000_000;
const say = (words: string, then = "affirm"): Move => ({ kind: "say", words, by: "typed", then });
/** Said, and what it asks is left unanswered. */
const leave = (words: string): Move => ({ kind: "say", words, by: "typed", then: undefined });
const wait = (seconds: number): Move => ({ kind: "wait", seconds });
const bundleOf = (moves: readonly Move[], rehearsal = false): Bundle =>
  collectionBundle(recordedFrom(playMoves(moves), rehearsal), NOW_MS);

const ofType = <T extends Resource["resourceType"]>({ entry = [] }: Bundle, type: T) =>
  entry.flatMap(({ resource }) => (resource?.resourceType === type ? [resource as ExtractResource<T>] : []));

describe("what does not count", () => {
  it("is entered in error where it was struck, and keeps its value", () => {
    const bundle = bundleOf([say("heart rate ninety"), say("disregard"), say("saline 250 given"), say("disregard")]);
    const [rate] = ofType(bundle, "Observation");
    expect([rate?.status, rate?.valueQuantity?.value]).toEqual(["entered-in-error", 90]);
    const [fluid] = ofType(bundle, "MedicationAdministration");
    expect([fluid?.status, fluid?.dosage?.dose?.value]).toEqual(["entered-in-error", 250]);
  });

  it("is no value where nobody confirmed it, but words that were said", () => {
    const bundle = bundleOf([leave("i c p fifteen"), wait(300)]);
    expect(ofType(bundle, "Observation")).toEqual([]);
    const [said] = ofType(bundle, "Communication");
    expect([said?.status, said?.payload?.[0]?.contentString]).toEqual(["completed", "i c p fifteen"]);
  });

  it("is in progress while the question is open, and nothing once it was denied", () => {
    expect(ofType(bundleOf([leave("i c p fifteen")]), "Communication")[0]?.status).toBe("in-progress");
    expect(ofType(bundleOf([say("i c p fifteen", "negative")]), "Communication")).toEqual([]);
  });
});

describe("codes", () => {
  const codesOf = (said: readonly string[]): readonly unknown[] =>
    ofType(bundleOf(said.map((words) => say(words))), "Observation").map(({ code, bodySite, component = [] }) =>
      [code, bodySite, ...component.map((part) => part.code)].map((one) => one?.coding?.map((c) => c.code).join()),
    );

  // The codes are those of VALUE_CODES and its neighbours, each with its source there.
  it("a perfusion pressure is one for LOINC and for ISO/IEEE 11073, as ICP is for LOINC and SNOMED CT", () => {
    expect(codesOf(["map ninety", "i c p twenty"])).toContainEqual(["60956-0,250844005", undefined]);
    expect(codesOf(["map ninety", "i c p twenty"])).toContainEqual(["61017-0,153604", undefined]);
  });

  it("a pupil never changes sides: which it is stands in the code, the site and the code of its reaction", () => {
    expect(codesOf(["left pupil four brisk"])).toEqual([["363953003,pupilLeft", "16089004", "79899-1"]]);
    expect(codesOf(["right pupil four brisk"])).toEqual([["363953003,pupilRight", "52378001", "79815-7"]]);
  });

  it("a reaction that was said without a size is a reaction, and no size without a value", () => {
    expect(codesOf(["left pupil fixed"])).toEqual([["79899-1", "16089004"]]);
    const [pupil] = ofType(bundleOf([say("left pupil fixed")]), "Observation");
    expect([pupil?.valueCodeableConcept?.text, pupil?.valueQuantity, pupil?.component]).toEqual([
      "fixed",
      undefined,
      undefined,
    ]);
  });
});

describe("the case as an Encounter", () => {
  const moves = [
    say("map ninety"),
    say("i c p twenty"),
    say("saline 250 given"),
    say("blade in"),
    leave("i c p fifty"),
  ];
  const bundle = documentBundle(recordedFrom(playMoves(moves)), NOW_MS);
  const [encounter] = ofType(bundle, "Encounter");

  it("has the case's own random id, its beginning, and a class that nobody could have known", () => {
    expect(encounter).toMatchObject({ status: "in-progress", class: { code: "UNK" } });
    expect(encounter?.identifier).toEqual([{ system: "urn:x-tragus:case", value: "random" }]);
    expect(encounter?.period?.end).toBeUndefined();
  });

  it("is referred to by all that R4 lets refer to one", () => {
    const to = { reference: `urn:uuid:${encounter?.id}` };
    const referring = (bundle.entry ?? []).flatMap(({ resource: r }): readonly (readonly [string, unknown])[] => {
      if (r?.resourceType === "MedicationAdministration") return [[r.resourceType, r.context]];
      const mayRefer = ["Composition", "Observation", "Procedure", "Communication"].includes(r?.resourceType ?? "");
      return r !== undefined && mayRefer ? [[r.resourceType, "encounter" in r ? r.encounter : undefined]] : [];
    });
    expect(new Set(referring.map(([type]) => type)).size).toBe(5);
    expect(referring.filter(([, reference]) => JSON.stringify(reference) !== JSON.stringify(to))).toEqual([]);
  });
});

describe("drugs", () => {
  it("that were passed over are not done, with the reason as said; an answer that was replaced is not there", () => {
    const bundle = bundleOf([say("fluid not needed"), say("sedation not needed no time"), say("fluid done")]);
    const told = ofType(bundle, "MedicationAdministration").map((m) => [
      m.status,
      m.medicationCodeableConcept?.text,
      m.statusReason?.[0]?.text,
    ]);
    expect(told).toEqual([["not-done", "sedation", "not needed: no time"]]);
  });

  it("run in segments: a new rate ends one and begins another, a stop ends the last", () => {
    const start = [say("weight 80 kilos"), say("start noradrenaline at 0.1"), wait(60), say("noradrenaline up to 0.2")];
    const told = (moves: readonly Move[]) =>
      ofType(bundleOf(moves), "MedicationAdministration").map((m) => [
        m.status,
        m.dosage?.rateQuantity?.value,
        m.effectivePeriod?.start?.slice(14, 19),
        m.effectivePeriod?.end?.slice(14, 19),
      ]);
    expect(told(start)).toEqual([
      ["completed", 0.1, "00:00", "01:00"],
      ["in-progress", 0.2, "01:00", undefined],
    ]);
    expect(told([...start, wait(60), say("stop noradrenaline")])[1]).toEqual(["completed", 0.2, "01:00", "02:00"]);
  });
});

describe("the patient", () => {
  it("is nobody: an age over 89 is told as that, and no words in which it may be", () => {
    const bundle = bundleOf([say("ninety four year old man"), say("heart rate ninety")]);
    const age = ofType(bundle, "Observation").find(({ code }) => code?.text === "Age");
    expect(age?.valueQuantity).toMatchObject({ value: 89, comparator: ">", code: "a" });
    expect(ofType(bundle, "Patient").map((patient) => Object.keys(patient))).toEqual([["resourceType", "id"]]);
    expect(JSON.stringify(bundle)).not.toMatch(/ninety four|\b94\b/u);
  });

  it("does not exist in a rehearsal, and every resource says so", () => {
    const marked = ({ entry = [] }: Bundle) => entry.map(({ resource }) => resource?.meta?.security?.[0]?.code);
    const rehearsed = documentBundle(recordedFrom(playMoves([say("heart rate ninety")]), true), NOW_MS);
    expect(new Set(marked(rehearsed))).toEqual(new Set(["HTEST"]));
    expect(ofType(rehearsed, "Composition")[0]?.title).toBe("Rehearsal, no patient: kilo four seven");
    expect(new Set(marked(bundleOf([say("heart rate ninety")])))).toEqual(new Set([undefined]));
  });
});

describe("alerts and Provenance", () => {
  it("an alert is an issue with its severity, from its raise to its end", () => {
    const [issue] = ofType(bundleOf([say("sats 82"), wait(5), say("sats 97"), say("sats 98")]), "DetectedIssue");
    expect(issue).toMatchObject({ status: "final", severity: "high", code: { text: "spo2Low" } });
    expect(issue?.identifiedPeriod?.end).toBeDefined();
  });

  it("a clock that was set is an issue of the device, of no patient", () => {
    const [issue] = ofType(bundleOf([{ kind: "clock", byMs: -3_600_000 }]), "DetectedIssue");
    expect([issue?.patient, issue?.detail]).toEqual([
      undefined,
      "Set back by 3600 s; no time in this record was moved by it.",
    ]);
  });

  it("tells apart what was said, what was worked out, and what was taken for granted", () => {
    const bundle = bundleOf([say("map ninety"), say("i c p twenty"), say("affirm"), say("tube in")]);
    const targets = ofType(bundle, "Provenance").map((p) => [p.activity?.coding?.[0]?.code, p.target?.length]);
    // Said: MAP, ICP, the attempt. Worked out: CPP. Assumed: the level of that MAP, the start of the attempt.
    expect(targets.slice(0, 1)).toEqual([["spoken", 3]]);
    expect(targets.map(([kind]) => kind)).toEqual(["spoken", "computed", "assumed"]);
    expect(targets[2]).toEqual(["assumed", 2]);
  });
});

describe("ids", () => {
  it("are UUIDs of version 8, the same for the same key, and none twice among 20,000 keys that are alike", () => {
    const keys = Array.from({ length: 20_000 }, (_, i) => `case-${i % 10_000}${i < 10_000 ? "" : "/map"}`);
    const ids = new Set(keys.map(resourceId));
    expect(ids.size).toBe(keys.length);
    const form = /^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/u;
    expect([...ids].filter((id) => !form.test(id))).toEqual([]);
    expect(resourceId("case-1")).toBe(resourceId("case-1"));
  });
});
