import type { Bundle } from "@medplum/fhirtypes";
import { describe, expect, it } from "vitest";
import { collectionBundle, documentBundle } from "../../../src/export/fhir/bundle.ts";
import { BLOOD_PRESSURE_PANEL, VALUE_CODES } from "../../../src/export/fhir/codes.ts";
import { playMoves, recordedFrom, type Move } from "../randomCase.ts";
import { complaints, listed } from "./judges.ts";

const SAID = [
  ...["one twenty over eighty", "heart rate ninety", "sats ninety seven", "map ninety", "i c p twenty"],
  ...["eyes two verbal not testable motor four", "saline 250 given", "noradrenaline 4 milligrams in 250"],
  ...["start noradrenaline at 5 millilitres per hour", "blade in", "sats eighty four", "suction ready"],
];
const facts = playMoves(SAID.map((words): Move => ({ kind: "say", words, by: "typed", then: "affirm" })));
const collection = collectionBundle(recordedFrom(facts), 1_900_000_000_000);
const document = documentBundle(recordedFrom(facts), 1_900_000_000_000);

/** A loose copy, so that it can be spoiled. */
type Loose = Record<string, any>; // eslint-disable-line @typescript-eslint/no-explicit-any
type Spoil = (bundle: Loose, find: (type: string, code?: string) => Loose) => void;

function spoiled(bundle: Bundle, spoil: Spoil): Bundle {
  const copy = structuredClone(bundle) as Loose & Bundle;
  spoil(copy, (type, code) => {
    const resources: readonly Loose[] = copy.entry?.map((e) => e.resource as Loose) ?? [];
    const found = resources.find(
      (r) => r.resourceType === type && (code === undefined || JSON.stringify(r).includes(code)),
    );
    if (found === undefined) throw new Error(`nothing to spoil: ${type}`);
    return found;
  });
  return copy;
}

const BOTH = { medicationCodeableConcept: { text: "a" }, medicationReference: { display: "b" } };
const HR = '"8867-4"';

// [what is wrong, how the bundle is spoiled, which judge must say so]
const PLANTED: readonly (readonly [string, Spoil, RegExp])[] = [
  ["a status that does not exist", (_, find) => (find("Observation").status = "done"), /^fhir: Code "done"/],
  ["no status", (_, find) => delete find("Observation").status, /^medplum: Missing.*status/],
  ["no code", (_, find) => delete find("Observation", HR).code, /^fhir: .*code/],
  ["an element that does not exist", (_, find) => (find("Observation").colour = "red"), /^medplum: .*colour/],
  ["the same, seen by the other", (_, find) => (find("Observation").colour = "red"), /^fhir: Unexpected/],
  ["a date that is none", (_, find) => (find("Observation").effectiveDateTime = "yesterday"), /^medplum: /],
  ["a number as text", (_, find) => (find("Observation", HR).valueQuantity.value = "90"), /^medplum: .*/],
  ["two values", (_, find) => (find("Observation", HR).valueString = "ninety"), /^choice: two value/],
  [
    "two times",
    (_, find) => (find("Observation", HR).effectivePeriod = { start: "2027-01-15" }),
    /^choice: two effective/,
  ],
  ["no value and no reason", (_, find) => delete find("Observation", HR).valueQuantity, /^choice: .*nothing/],
  [
    "a value and a reason (obs-6)",
    (_, find) => (find("Observation", HR).dataAbsentReason = { text: "x" }),
    /^medplum: .*/,
  ],
  ["no time", (_, find) => delete find("Observation", HR).effectiveDateTime, /^choice: no effective/],
  [
    "a unit as people write it",
    (_, find) => Object.assign(find("Observation", HR).valueQuantity, { code: "mmHg", unit: "mmHg" }),
    /^ucum: "mmHg"/,
  ],
  ["no unit", (_, find) => delete find("Observation", HR).valueQuantity.code, /^ucum: no unit/],
  [
    "a unit that the profile does not know",
    (_, find) => Object.assign(find("Observation", HR).valueQuantity, { code: "1/min", unit: "1/min" }),
    /^profile: /,
  ],
  [
    "saturation under one code alone",
    (_, find) => find("Observation", "59408-5").code.coding.shift(),
    /^medplum: .*'OxygenSatCode'/,
  ],
  ["half a panel", (_, find) => find("Observation", "85354-9").component.pop(), /^panel: /],
  [
    "no medication",
    (_, find) => delete find("MedicationAdministration").medicationCodeableConcept,
    /^medplum: Missing/,
  ],
  [
    "a dosage of nothing (mad-1)",
    (_, find) => (find("MedicationAdministration").dosage = { text: "some" }),
    /^medplum: .*/,
  ],
  [
    "a drug given to a device",
    (_, find) => (find("MedicationAdministration").subject = find("Observation", "derivedFrom").device),
    /^medplum: Invalid reference/,
  ],
  ["a severity that does not exist", (_, find) => (find("DetectedIssue").severity = "medium"), /^fhir: Code "medium"/],
  [
    "a reason that HL7 does not publish",
    (_, find) => (find("Observation", "dataAbsentReason").dataAbsentReason.coding[0].code = "nt"),
    /^published: /,
  ],
  [
    "a reference that leads nowhere",
    (_, find) => (find("Observation").subject.reference = "urn:uuid:0"),
    /^reference: leads nowhere/,
  ],
  ["an address twice", (b) => b["entry"].push(b["entry"][0]), /^reference: an address/],
  ["an address of another id", (b) => (b["entry"][0].fullUrl = b["entry"][1].fullUrl), /^reference: /],
  ["an Encounter without a class", (_, find) => delete find("Encounter").class, /^medplum: Missing/],
  [
    "a class in the shape of R5",
    (_, find) => (find("Encounter").class = [{ coding: [find("Encounter").class] }]),
    /^medplum: .*class/,
  ],
  [
    "a list in a state that does not exist",
    (_, find) => (find("QuestionnaireResponse").status = "done"),
    /^fhir: Code/,
  ],
  [
    "an answer with two values",
    (_, find) => (find("QuestionnaireResponse").item[0].item[0].answer[0].valueString = "done"),
    /^choice: two value/,
  ],
  [
    "a strength without a unit",
    (_, find) => delete find("Medication").ingredient[0].strength.numerator.code,
    /^ucum: no unit/,
  ],
  ["a drug told twice", (_, find) => Object.assign(find("MedicationAdministration"), BOTH), /^choice: two medication/],
  ["Provenance of nobody", (_, find) => delete find("Provenance").agent, /^medplum: Missing/],
  ["Provenance of no time", (_, find) => delete find("Provenance").recorded, /^medplum: Missing/],
];

describe("the judges of bundles", () => {
  it("have nothing against the bundles that are spoiled below", () => {
    expect([...complaints(collection), ...complaints(document)]).toEqual([]);
  });

  it.each(PLANTED)("see %s", (_what, spoil, seen) => {
    expect(complaints(spoiled(collection, spoil))).toContainEqual(expect.stringMatching(seen));
  });

  it("see a document without its identifier (bdl-9), and one that does not begin with its Composition (bdl-11)", () => {
    expect(complaints(spoiled(document, (b) => delete b["identifier"]))).not.toEqual([]);
    expect(complaints(spoiled(document, (b) => b["entry"].reverse()))).not.toEqual([]);
  });
});

describe("our codes of vital signs", () => {
  it("are those that R4 lists as vital signs, as far as it lists them", () => {
    const vitalSigns = listed.get("observation-vitalsignresult");
    const ours = (["sbp", "dbp", "map", "hr", "rr", "spo2", "temp", "weight", "height"] as const).map(
      (code) => VALUE_CODES[code][2],
    );
    expect([...ours, BLOOD_PRESSURE_PANEL.code].filter((code) => vitalSigns?.has(code ?? "") !== true)).toEqual([]);
  });

  it("take the outcomes of a procedure and the type of document from its value sets", () => {
    expect([...(listed.get("procedure-outcome") ?? [])]).toEqual(expect.arrayContaining(["385669000", "385671000"]));
    expect(listed.get("c80-doc-typecodes")?.has("74207-2")).toBe(true);
  });
});
