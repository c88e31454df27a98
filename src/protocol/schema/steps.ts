import * as v from "valibot";
import { number, source, text, vitalCode } from "./parts.ts";

const step = v.strictObject({
  id: text,
  /** Read aloud; at most eight words. */
  challenge: text,
  /** May be waived only aloud. */
  killer: v.boolean(),
  /** Answered by the record itself, without a word: the target is met, or these vitals are recorded. */
  satisfiedBy: v.exactOptional(
    v.variant("kind", [
      v.strictObject({ kind: v.literal("map-at-target") }),
      v.strictObject({
        kind: v.literal("recorded"),
        codes: v.pipe(v.array(vitalCode), v.nonEmpty("names no vital")),
      }),
    ]),
  ),
  /** The value that a full answer carries, and within which limits it is believed. */
  carries: v.exactOptional(v.strictObject({ what: text, unit: text, low: number, high: number })),
  source,
});

export const group = v.strictObject({
  id: text,
  title: text,
  /** `prepare`: read before the drugs are given. `afterTube`: once the tube is in. */
  phase: v.picklist(["prepare", "afterTube"]),
  steps: v.pipe(v.array(step), v.nonEmpty("needs a step")),
});
