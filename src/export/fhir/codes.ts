import type { Coding } from "@medplum/fhirtypes";
import type { Method } from "../../log/facts.ts";
import type { VitalCode } from "../../core/vitals.ts";

const HL7 = "http://terminology.hl7.org/CodeSystem";
export const UCUM_SYSTEM = "http://unitsofmeasure.org";
/** Ours: for what no code was found for, so that one export can be told from free text of another. */
const OWN_SYSTEM = "urn:x-tragus:code";
/** Of the random ids of cases. */
export const CASE_SYSTEM = "urn:x-tragus:case";

export const loinc = (code: string): Coding => ({ system: "http://loinc.org", code });
const snomed = (code: string): Coding => ({ system: "http://snomed.info/sct", code });
const mdc = (code: string): Coding => ({ system: "urn:iso:std:iso:11073:10101", code });
export const own = (code: string): Coding => ({ system: OWN_SYSTEM, code });
export const hl7 = (system: string, code: string, display: string): Coding => ({
  system: `${HL7}/${system}`,
  code,
  display,
});

export type Category = "vital-signs" | "exam" | "survey" | "laboratory" | "procedure";
export const CATEGORY_NAMES: Readonly<Record<Category, string>> = {
  "vital-signs": "Vital Signs",
  exam: "Exam",
  survey: "Survey",
  laboratory: "Laboratory",
  procedure: "Procedure",
};

/**
 * What each value is in other systems: its category, its LOINC codes, and what it is called.
 *
 * Source: the codes were read in published profiles (clinical dossier, section 14); those that R4 itself lists as vital
 * signs are held against its value set in the tests. From memory, to be verified against a LOINC release: 15074-8
 * (glucose) and 30525-0 (age). Pupils have none here: those of LOINC for their size mean a pupillometer.
 */
export const VALUE_CODES: Readonly<
  Record<VitalCode | "cpp" | "gcs", readonly [Category, string, ...(readonly string[])]>
> = {
  sbp: ["vital-signs", "Systolic blood pressure", "8480-6"],
  dbp: ["vital-signs", "Diastolic blood pressure", "8462-4"],
  map: ["vital-signs", "Mean arterial pressure", "8478-0"],
  hr: ["vital-signs", "Heart rate", "8867-4"],
  rr: ["vital-signs", "Respiratory rate", "9279-1"],
  // The profile of R4 asks for the first, the second says that it was pulse oximetry.
  spo2: ["vital-signs", "Oxygen saturation", "2708-6", "59408-5"],
  etco2: ["vital-signs", "End-tidal carbon dioxide, pressure", "19891-1"],
  icp: ["vital-signs", "Intracranial pressure", "60956-0"],
  // Read with all its axes (perfusion, pressure, cerebrum) in a public copy of LOINC and in a hospital's mapping.
  cpp: ["vital-signs", "Cerebral perfusion pressure, MAP less ICP", "61017-0"],
  temp: ["vital-signs", "Body temperature", "8310-5"],
  glucose: ["laboratory", "Glucose in blood", "15074-8"],
  gcs: ["survey", "Glasgow coma score, total", "9269-2"],
  gcsEye: ["survey", "Glasgow coma score, eye", "9267-6"],
  gcsVerbal: ["survey", "Glasgow coma score, verbal", "9270-0"],
  gcsMotor: ["survey", "Glasgow coma score, motor", "9268-4"],
  pupilLeft: ["exam", "Left pupil"],
  pupilRight: ["exam", "Right pupil"],
  weight: ["vital-signs", "Body weight", "29463-7"],
  height: ["vital-signs", "Body height", "8302-2"],
  age: ["exam", "Age", "30525-0"],
};

/** Systolic, diastolic and mean once more, where it was said how they were taken. Source: as above. */
export const PRESSURE_CODES: Readonly<Partial<Record<Method, Readonly<Partial<Record<VitalCode, string>>>>>> = {
  cuff: { sbp: "76534-7", dbp: "76535-4", map: "76536-2" },
  arterial: { sbp: "76215-3", dbp: "76213-8", map: "76214-6" },
};

export const BLOOD_PRESSURE_PANEL = loinc("85354-9");
/**
 * Codes of other systems for the same. Source: ICP in a published profile (clinical dossier, section 14). CPP is
 * MDC_PRESS_CEREB_PERF, read as 22532 of the partition that gives ICP, 22536, its published 153608.
 */
export const OTHER_CODES: Readonly<Partial<Record<keyof typeof VALUE_CODES, Coding>>> = {
  icp: snomed("250844005"),
  cpp: mdc("153604"),
};

type Pupil = Extract<VitalCode, "pupilLeft" | "pupilRight">;
/** Source: read in the published profiles of a national intensive care module, and in the value set of its body sites. */
export const PUPIL_SIZE = snomed("363953003");
export const PUPIL_SITES: Readonly<Record<Pupil, Coding>> = {
  pupilLeft: snomed("16089004"),
  pupilRight: snomed("52378001"),
};
/** "Pupillary response". Source: read in a published national profile; the left one also in a public copy of LOINC. */
export const PUPIL_REACTIONS: Readonly<Record<Pupil, Coding>> = {
  pupilLeft: loinc("79899-1"),
  pupilRight: loinc("79815-7"),
};
/** Insertion of a tube into the trachea. Source: read under that name in public lists for ambulance records. */
export const INTUBATION = snomed("112798008");
/** Source: value set procedure-outcome of R4. */
export const SUCCESSFUL = snomed("385669000");
export const UNSUCCESSFUL = snomed("385671000");
/** Source: value set c80-doc-typecodes of R4. */
export const PREHOSPITAL_SUMMARY: Coding = { ...loinc("74207-2"), display: "Prehospital summary Document" };
/** Source: code system v3-ActReason of R4. */
export const TEST_DATA = hl7("v3-ActReason", "HTEST", "test health data");
