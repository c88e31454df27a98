import * as v from "valibot";
import { drugClass } from "./drugs.ts";
import { number, positive, source, text, vitalCode } from "./parts.ts";

const drugClasses = v.pipe(v.array(drugClass), v.nonEmpty("names no class"));

/** What in the record answers a step, so that nobody has to say "done". */
const satisfiedBy = v.variant("kind", [
  v.strictObject({ kind: v.literal("map-at-target") }),
  v.strictObject({
    kind: v.literal("recorded"),
    codes: v.pipe(v.array(vitalCode), v.nonEmpty("names no vital")),
    /** An old pupil tells nothing of the brain after the tube, and one seen under paralysis is no examination. */
    when: v.picklist(["any", "beforeParalysis", "sinceTube"]),
  }),
  /** Oxygen has run for as long as the protocol asks. */
  v.strictObject({ kind: v.literal("preoxygenated") }),
  /**
   * The strength of a drug of this class that can be given at once was read back and affirmed. Over `mostMl` it is a bag
   * to run from, and no syringe.
   */
  v.strictObject({ kind: v.literal("strength-affirmed"), drugClass, mostMl: v.exactOptional(positive) }),
  /** An infusion of any of these classes is running. */
  v.strictObject({ kind: v.literal("infusion-running"), drugClasses }),
  /** Fluid or blood was given. */
  v.strictObject({ kind: v.literal("fluid-given") }),
  /** The latest EtCO2 lies in the band that counts now. */
  v.strictObject({ kind: v.literal("etco2-in-band") }),
  v.strictObject({ kind: v.literal("airway"), event: v.literal("tubeConfirmed") }),
]);

/** The value that a full answer carries, and within which limits it is believed. */
export const carries = v.strictObject({ what: text, unit: text, low: number, high: number });

const step = v.strictObject({
  id: text,
  /** How it is called when told what is left; at most three words, its own among all groups. */
  name: text,
  /** Read aloud; at most eight words. */
  challenge: text,
  /** May be waived only aloud. */
  killer: v.boolean(),
  satisfiedBy: v.exactOptional(satisfiedBy),
  carries: v.exactOptional(carries),
  source,
});

export const group = v.strictObject({
  id: text,
  title: text,
  /**
   * `prepare`: read before the drugs are given. `afterTube`: once the tube is in. `rescue`: while herniation is
   * treated. `failedAirway`: when the airway has failed. A file may do without the last two.
   */
  phase: v.picklist(["prepare", "afterTube", "rescue", "failedAirway"]),
  steps: v.pipe(v.array(step), v.nonEmpty("needs a step")),
});
