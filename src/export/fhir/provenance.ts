import type { Observation, Provenance, ProvenanceAgent, Reference } from "@medplum/fhirtypes";
import type { Fact } from "../../log/facts.ts";
import type { Strike } from "../statements.ts";
import { hl7, own } from "./codes.ts";
import { concept, referTo, type Context, type Exported, type Origin } from "./elements.ts";
import { panelFactIds } from "./observations.ts";
import { resourceId } from "./resourceId.ts";

const WORDS: Readonly<Record<Origin, string>> = {
  spoken: "said or typed by a person, understood by the device",
  computed: "worked out by the device from what was said",
  assumed: "in part taken for granted: see the note of each",
};
/** People are not named in a record, so there is nobody to refer to. */
const NOBODY = { display: "Clinician at the bedside, not named" };

const kind = (code: string, display: string) => concept(display, hl7("provenance-participant-type", code, display));

const byDevice = ({ device }: Context): ProvenanceAgent => ({ type: kind("assembler", "Assembler"), who: device });
const bySpeaker = (context: Context): ProvenanceAgent[] => [
  { type: kind("author", "Author"), who: NOBODY },
  byDevice(context),
];

const base = (context: Context, key: string, nowMs: number) => ({
  resourceType: "Provenance" as const,
  id: resourceId(key),
  ...context.meta,
  recorded: context.time(nowMs),
});

/** One statement for each way in which a resource can have come about, about all that came about so. */
const byOrigin = (context: Context, all: readonly Exported[], nowMs: number): readonly Provenance[] =>
  (["spoken", "computed", "assumed"] as const).flatMap((origin): readonly Provenance[] => {
    const target = all.flatMap(({ resource, origins }) =>
      origins.includes(origin) ? [{ reference: `urn:uuid:${resource.id}` }] : [],
    );
    if (target.length === 0) return [];
    return [
      {
        ...base(context, `${context.recorded.caseId}/provenance/${origin}`, nowMs),
        target,
        activity: concept(WORDS[origin], own(origin)),
        agent: origin === "spoken" ? bySpeaker(context) : [byDevice(context)],
      },
    ];
  });

/** When something was said, for a resource that has no place for its own time. */
const saidThen = (context: Context, all: readonly Exported[], nowMs: number): readonly Provenance[] =>
  all.flatMap(({ resource, saidMs }): readonly Provenance[] =>
    saidMs === undefined
      ? []
      : [
          {
            ...base(context, `${resource.id}/said`, nowMs),
            target: [{ reference: `urn:uuid:${resource.id}` }],
            occurredDateTime: context.time(saidMs),
            activity: concept("read back and affirmed", own("affirmed")),
            agent: bySpeaker(context),
          },
        ],
  );

/** What was struck out, when and why; and for a value that was put right later, which one it takes the place of. */
function changes(context: Context, all: readonly Exported[], nowMs: number): readonly Provenance[] {
  const { facts } = context.recorded;
  const panels = panelFactIds(context);
  const there = new Set(all.map(({ resource }) => resource.id));
  const about = (factId: string): readonly Reference<Observation>[] =>
    [panels.get(factId) ?? factId, `${factId}/value`, `${factId}/answer`]
      .filter((key) => there.has(resourceId(key)))
      .map((key) => referTo<Observation>(key));
  const struck = (fact: Strike): readonly Provenance[] => {
    const target = [...new Map(fact.targetIds.flatMap(about).map((r) => [r.reference, r])).values()];
    const activity = concept(`struck out: ${fact.reason}`, own("struck"));
    return target.length === 0 ? [] : [stated(fact, target, activity)];
  };
  const stated = (fact: Fact, target: Provenance["target"], activity: Provenance["activity"]): Provenance => ({
    ...base(context, `${fact.id}/provenance`, nowMs),
    target,
    occurredDateTime: context.time(fact.atMs),
    ...(activity === undefined ? {} : { activity }),
    agent: bySpeaker(context),
  });
  return facts.flatMap((fact): readonly Provenance[] => {
    if (fact.type === "entry.struck") return struck(fact);
    if (fact.type !== "vital.recorded" || fact.corrects === undefined) return [];
    const [old] = about(fact.corrects.id);
    const target = [...about(fact.id)];
    if (old === undefined || target.length === 0) return [];
    const revised = stated(fact, target, concept("put right later", own("corrected")));
    return [{ ...revised, entity: [{ role: "revision", what: old }] }];
  });
}

/** Where every resource comes from, and what became of it. */
export const provenances = (context: Context, all: readonly Exported[], nowMs: number): readonly Provenance[] => [
  ...byOrigin(context, all, nowMs),
  ...saidThen(context, all, nowMs),
  ...changes(context, all, nowMs),
];
