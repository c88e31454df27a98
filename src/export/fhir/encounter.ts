import type { Encounter } from "@medplum/fhirtypes";
import { CASE_SYSTEM, hl7 } from "./codes.ts";
import { concept, encounterKey, period, type Context } from "./elements.ts";
import { resourceId } from "./resourceId.ts";

/** R4 wants a class, and nobody says whether a case is in the field, in a department or between two. */
const PLACE_NOT_KNOWN = hl7("v3-NullFlavor", "UNK", "unknown");

/**
 * The case as one episode of care, so that whoever receives loose resources can ask for all of one case, and when it was.
 * Its identifier is the random one of the case: the same case exported again is known by it.
 */
export function encounter(context: Context): Encounter {
  const { facts, caseId, label } = context.recorded;
  const closedMs = facts.find(({ type }) => type === "case.closed")?.atMs;
  const openedMs = facts[0]?.atMs;
  return {
    resourceType: "Encounter",
    id: resourceId(encounterKey(context.recorded)),
    ...context.meta,
    identifier: [{ system: CASE_SYSTEM, value: caseId }],
    status: closedMs === undefined ? "in-progress" : "finished",
    class: PLACE_NOT_KNOWN,
    type: [concept(`Case ${label}`)],
    subject: context.subject,
    ...(openedMs === undefined ? {} : { period: period(context, openedMs, closedMs) }),
  };
}
