import type { Composition, Narrative, Resource } from "@medplum/fhirtypes";
import { PREHOSPITAL_SUMMARY } from "./codes.ts";
import { concept, type Context } from "./elements.ts";
import { resourceId } from "./resourceId.ts";

const ESCAPES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
const escape = (text: string): string => text.replace(/[&<>"]/gu, (sign) => ESCAPES[sign] ?? "");

const narrative = (lines: readonly string[]): Narrative => ({
  status: "generated",
  div: `<div xmlns="http://www.w3.org/1999/xhtml">${lines.map((line) => `<p>${escape(line)}</p>`).join("")}</div>`,
});

/** What every reader must know before the numbers. */
function aboutTheRecord({ recorded: { rehearsal, protocol, mark, label } }: Context): readonly string[] {
  return [
    ...(rehearsal ? ["Rehearsal: not a patient."] : []),
    `Case ${label}. Protocol ${mark.name}, version ${mark.version}, SHA-256 ${mark.hash ?? "not known"}.`,
    protocol.caution,
  ];
}

/** Titles in the order of the document, and which resources stand under each. */
const SECTIONS: readonly (readonly [string, Resource["resourceType"]])[] = [
  ["Findings and values", "Observation"],
  ["Airway", "Procedure"],
  ["Drugs and fluids", "MedicationAdministration"],
  ["Alerts", "DetectedIssue"],
  ["Not confirmed: counts for nothing", "Communication"],
  ["Where each entry comes from", "Provenance"],
];

/** The head of the document: nobody has signed it, so it is preliminary. */
export function composition(context: Context, resources: readonly Resource[], nowMs: number): Composition {
  const { recorded, time, meta, subject, encounter, device } = context;
  const sections = SECTIONS.flatMap(([title, type]) => {
    const entry = resources.flatMap((r) => (r.resourceType === type ? [{ reference: `urn:uuid:${r.id}` }] : []));
    return entry.length === 0 ? [] : [{ title, entry }];
  });
  const about = narrative(aboutTheRecord(context));
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
