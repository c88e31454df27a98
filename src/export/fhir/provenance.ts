import type { Provenance } from "@medplum/fhirtypes";
import { hl7, own } from "./codes.ts";
import { concept, type Context, type Exported, type Origin } from "./elements.ts";
import { resourceId } from "./resourceId.ts";

const WORDS: Readonly<Record<Origin, string>> = {
  spoken: "said or typed by a person, understood by the device",
  computed: "worked out by the device from what was said",
  assumed: "in part taken for granted: see the note of each",
};
/** People are not named in a record, so there is nobody to refer to. */
const NOBODY = { display: "Clinician at the bedside, not named" };

const kind = (code: string, display: string) => concept(display, hl7("provenance-participant-type", code, display));

/** One statement for each way in which a resource can have come about, about all that came about so. */
export function provenances(context: Context, all: readonly Exported[], nowMs: number): readonly Provenance[] {
  return (["spoken", "computed", "assumed"] as const).flatMap((origin): readonly Provenance[] => {
    const target = all.flatMap(({ resource, origins }) =>
      origins.includes(origin) ? [{ reference: `urn:uuid:${resource.id}` }] : [],
    );
    if (target.length === 0) return [];
    const byDevice = { type: kind("assembler", "Assembler"), who: context.device };
    return [
      {
        resourceType: "Provenance",
        id: resourceId(`${context.recorded.caseId}/provenance/${origin}`),
        ...context.meta,
        target,
        recorded: context.time(nowMs),
        activity: concept(WORDS[origin], own(origin)),
        agent: origin === "spoken" ? [{ type: kind("author", "Author"), who: NOBODY }, byDevice] : [byDevice],
      },
    ];
  });
}
