import * as v from "valibot";
import { timers } from "../schema/alerts.ts";
import { dose, drug, osmotic, recipe } from "../schema/drugs.ts";
import { count, notNegative, priority, source, text, vitalCode } from "../schema/parts.ts";
import { oxygen, trend } from "../schema/physiology.ts";
import { protocolSchema } from "../schema/protocolSchema.ts";
import { carries } from "../schema/steps.ts";
import { targets } from "../schema/targets.ts";

const step = v.strictObject({
  id: text,
  challenge: text,
  killer: v.boolean(),
  satisfiedBy: v.exactOptional(
    v.variant("kind", [
      v.strictObject({ kind: v.literal("map-at-target") }),
      v.strictObject({
        kind: v.literal("recorded"),
        codes: v.pipe(v.array(vitalCode), v.nonEmpty("names no vital")),
      }),
    ]),
  ),
  carries: v.exactOptional(carries),
  source,
});

const group = v.strictObject({
  id: text,
  title: text,
  phase: v.picklist(["prepare", "afterTube"]),
  steps: v.pipe(v.array(step), v.nonEmpty("needs a step")),
});

const alert = v.strictObject({
  id: text,
  code: v.picklist(["sbp", "map", "cpp", "spo2"]),
  bands: v.pipe(
    v.array(v.strictObject({ under: v.picklist(["target", "critical"]), inclusive: v.boolean(), priority, source })),
    v.nonEmpty("needs a band"),
  ),
  clearBy: notNegative,
  clearReadings: count,
  source,
});

const population = v.omit(targets.entries.populations.pipe[0].item, ["hrPerMin"]);

const doses = v.array(v.omit(dose, ["afterTube"]));

const LATER_TIMERS = [
  "escalateS",
  "alertCap",
  "alertPauseMaxS",
  "promptAgainS",
  "co2AfterTubeS",
  "attemptS",
  "apnoeaEveryS",
  "neuroCheckEveryS",
  "fullSetEveryS",
  "afterTube",
  "watch",
] as const;

/** The second shape: that of today without what came later. Whatever a later shape changes must be put back here. */
export const schemaTwo = v.strictObject({
  ...v.omit(protocolSchema, ["doses", "conditions", "handover"]).entries,
  schema: v.literal(2),
  targets: v.strictObject({
    ...v.omit(targets, ["herniation"]).entries,
    populations: v.pipe(v.array(population), v.nonEmpty("needs a population")),
  }),
  trend: v.omit(trend, ["fallingReadings"]),
  alerts: v.array(alert),
  groups: v.array(group),
  drugs: v.array(v.strictObject({ ...drug.entries, doses, recipes: v.array(v.omit(recipe, ["for"])) })),
  osmotics: v.array(v.strictObject({ ...osmotic.entries, doses })),
  oxygen: v.omit(oxygen, ["cylinderWarnMin"]),
  timers: v.omit(timers, LATER_TIMERS),
});

export type FileTwo = v.InferOutput<typeof schemaTwo>;
