import type { Composition, Resource } from "@medplum/fhirtypes";
import { PREHOSPITAL_SUMMARY } from "./codes.ts";
import { concept, type Context } from "./elements.ts";
import { listed, paragraphs } from "./narrative.ts";
import { resourceId } from "./resourceId.ts";

/** What every reader must know before the numbers. */
function aboutTheRecord({ recorded: { rehearsal, protocol, mark, label, unsavedIds } }: Context): readonly string[] {
  return [
    ...(rehearsal ? ["Rehearsal: not a patient."] : []),
    `Case ${label}. Protocol ${mark.name}, version ${mark.version}, SHA-256 ${mark.hash ?? "not known"}.`,
    protocol.caution,
    ...(unsavedIds.size > 0 ? [`${unsavedIds.size} facts of it could not be saved on the device yet.`] : []),
  ];
}

/** Titles in the order of the document, and which resources stand under each. */
const SECTIONS: readonly (readonly [string, ...(readonly Resource["resourceType"][])])[] = [
  ["Findings, values and course", "Observation"],
  ["Airway and rescue", "Procedure"],
  ["Drugs and fluids, and concentrations that were read back", "MedicationAdministration", "Medication"],
  ["Lists", "QuestionnaireResponse"],
  ["Alerts", "DetectedIssue"],
  ["Not confirmed: counts for nothing", "Communication"],
  ["Where each entry comes from", "Provenance"],
];

/** The head of the document: nobody has signed it, so it is preliminary. */
export function composition(context: Context, resources: readonly Resource[], nowMs: number): Composition {
  const { recorded, time, meta, subject, encounter, device } = context;
  const sections = SECTIONS.flatMap(([title, ...types]) => {
    const under = resources.filter(({ resourceType }) => types.includes(resourceType));
    const entry = under.map(({ id }) => ({ reference: `urn:uuid:${id}` }));
    return entry.length === 0 ? [] : [{ title, text: listed(under), entry }];
  });
  const about = paragraphs(aboutTheRecord(context));
  return {
    resourceType: "Composition",
    id: resourceId(`${recorded.caseId}/composition`),
    ...meta,
    text: about,
    status: "preliminary",
    type: concept("Record of a case", PREHOSPITAL_SUMMARY),
    subject,
    encounter,
    date: time(nowMs),
    author: [device],
    title: `${recorded.rehearsal ? "Rehearsal, no patient: " : ""}${recorded.label}`,
    section: [{ title: "About this record", text: about }, ...sections],
  };
}
