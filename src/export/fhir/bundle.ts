import type { Bundle, Device, Patient, Resource } from "@medplum/fhirtypes";
import type { RecordedCase } from "../recordedCase.ts";
import { checklists } from "./checklists.ts";
import { composition } from "./composition.ts";
import { computedObservations } from "./computedObservations.ts";
import { course } from "./course.ts";
import { encounter } from "./encounter.ts";
import { createContext, deviceKey, patientKey, urnOf, type Context } from "./elements.ts";
import { issues } from "./issues.ts";
import { medications } from "./medications.ts";
import { spokenObservations } from "./observations.ts";
import { procedures } from "./procedures.ts";
import { provenances } from "./provenance.ts";
import { rescues } from "./rescues.ts";
import { resourceId } from "./resourceId.ts";
import { stepValues } from "./stepValues.ts";
import { strengths } from "./strengths.ts";
import { unconfirmed } from "./unconfirmed.ts";

/** Somebody, and nothing of who: there is no element in it but its id. */
const patient = ({ recorded, meta }: Context): Patient => ({
  resourceType: "Patient",
  id: resourceId(patientKey(recorded)),
  ...meta,
});

const device = ({ recorded: { mark, ...recorded }, meta }: Context): Device => ({
  resourceType: "Device",
  id: resourceId(deviceKey({ mark, ...recorded })),
  ...meta,
  status: "active",
  deviceName: [{ name: "Tragus", type: "user-friendly-name" }],
  type: { text: "Decision support and record, software" },
  version: [{ type: { text: "protocol" }, value: [mark.name, mark.version, mark.hash].join(" ").trim() }],
});

function contents(context: Context, nowMs: number): readonly Resource[] {
  const all = [
    ...spokenObservations(context),
    ...computedObservations(context),
    ...stepValues(context),
    ...course(context),
    ...procedures(context),
    ...rescues(context),
    ...checklists(context),
    ...strengths(context),
    ...medications(context),
    ...issues(context),
    ...unconfirmed(context),
  ];
  const resources = all.map(({ resource }) => resource);
  return [patient(context), encounter(context), device(context), ...resources, ...provenances(context, all, nowMs)];
}

function bundle(context: Context, type: "collection" | "document", resources: readonly Resource[], nowMs: number) {
  const { recorded, time, meta } = context;
  const key = `${recorded.caseId}/${type}/${recorded.facts.length}`;
  const made: Bundle = {
    resourceType: "Bundle",
    id: resourceId(key),
    ...meta,
    identifier: { system: "urn:ietf:rfc:3986", value: urnOf(key) },
    type,
    timestamp: time(nowMs),
    entry: resources.map((resource) => ({ fullUrl: `urn:uuid:${resource.id}`, resource })),
  };
  return made;
}

/**
 * The case as loose resources of FHIR R4, for a store or for a study.
 *
 * @param nowMs when it is exported, Unix ms. The same case at the same time is the same bundle to the byte.
 *
 * Not for: posting as it is; each entry would need a request.
 */
export function collectionBundle(recorded: RecordedCase, nowMs: number): Bundle {
  const context = createContext(recorded);
  return bundle(context, "collection", contents(context, nowMs), nowMs);
}

/** The case as one document of FHIR R4, for who takes the patient over: a Composition first, which leads to all the rest. */
export function documentBundle(recorded: RecordedCase, nowMs: number): Bundle {
  const context = createContext(recorded);
  const resources = contents(context, nowMs);
  return bundle(context, "document", [composition(context, resources, nowMs), ...resources], nowMs);
}
