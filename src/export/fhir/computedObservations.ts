import type { Observation } from "@medplum/fhirtypes";
import { computedCpps, computedMeans, examinedGcs, isLevelAssumed, type Computed } from "../computedReadings.ts";
import { readingsOf } from "../readings.ts";
import { absent, concept, effective, quantity, referTo, type Context, type Exported } from "./elements.ts";
import { panelFactIds, valueCode } from "./observations.ts";
import { resourceId } from "./resourceId.ts";

const observation = (key: string) => referTo<Observation>(key);
const keyOf = (what: "map" | "cpp" | "gcs", factId: string): string => `${factId}/${what}`;

const base = (context: Context, what: "map" | "cpp" | "gcs", { factId, sinceMs, atMs }: Omit<Computed, "value">) => ({
  resourceType: "Observation" as const,
  id: resourceId(keyOf(what, factId)),
  ...context.meta,
  status: "final" as const,
  ...valueCode(what),
  subject: context.subject,
  encounter: context.encounter,
  ...effective(context, sinceMs, atMs),
  device: context.device,
});

function means(context: Context): readonly Exported<Observation>[] {
  const panels = panelFactIds(context);
  return computedMeans(context.recorded).map((mean) => {
    const from = new Set(mean.ofIds.map((id) => panels.get(id) ?? id));
    const resource: Observation = {
      ...base(context, "map", mean),
      method: concept("computed, diastolic and a third of the pulse pressure"),
      valueQuantity: quantity(mean.value, "mm[Hg]"),
      derivedFrom: [...from].map(observation),
    };
    return { resource, origins: ["computed"] };
  });
}

const cpps = (context: Context): readonly Exported<Observation>[] =>
  computedCpps(context.recorded).map((cpp) => {
    const { mean, meanFactId, icpFactId } = cpp;
    const assumed = isLevelAssumed(mean);
    const zeroed = assumed
      ? `${context.recorded.protocol.pressures.transducerLevel.value}, as the protocol takes it to be: not said`
      : (mean.level ?? "cuff");
    const resource: Observation = {
      ...base(context, "cpp", cpp),
      method: concept("computed, MAP less ICP"),
      valueQuantity: quantity(cpp.value, "mm[Hg]"),
      derivedFrom: [mean.kind === "measured" ? meanFactId : keyOf("map", meanFactId), icpFactId].map(observation),
      note: [{ text: `Level of the MAP: ${zeroed}.` }],
    };
    return { resource, origins: assumed ? ["computed", "assumed"] : ["computed"] };
  });

const scores = (context: Context): readonly Exported<Observation>[] =>
  readingsOf(context.recorded).flatMap((reading): readonly Exported<Observation>[] => {
    const gcs = examinedGcs(context.recorded, reading);
    if (gcs === undefined) return [];
    const [{ id: factId, atMs }] = reading.facts;
    const resource: Observation = {
      ...base(context, "gcs", { factId, sinceMs: atMs, atMs }),
      ...(gcs.total === "not-testable"
        ? { dataAbsentReason: absent("not-performed", "a part was not testable") }
        : { valueQuantity: quantity(gcs.total, "{score}") }),
      derivedFrom: gcs.parts.map(({ id }) => observation(id)),
    };
    return [{ resource, origins: ["computed"] }];
  });

/** What was worked out from what was said: means, perfusion pressures where ICP was measured, totals of coma scores. */
export const computedObservations = (context: Context): readonly Exported<Observation>[] => [
  ...means(context),
  ...cpps(context),
  ...scores(context),
];
