import type { ReactivityScore } from "./pupils.ts";
import type { Limits, Score } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";
import { VITALS } from "./vitals.ts";

/** Cannot be examined, as the verbal part of an intubated patient. Never the lowest score. */
export type NotTestable = "not-testable";
export type EyeScore = 1 | 2 | 3 | 4;
export type VerbalScore = 1 | 2 | 3 | 4 | 5;
export type MotorScore = 1 | 2 | 3 | 4 | 5 | 6;
export type GcsPart = "eye" | "verbal" | "motor";

/** One examination on the Glasgow coma scale. A part that is left out was not examined, which is not `not-testable`. */
export type GcsParts = {
  readonly eye?: EyeScore | NotTestable | undefined;
  readonly verbal?: VerbalScore | NotTestable | undefined;
  readonly motor?: MotorScore | NotTestable | undefined;
};

export type NoSuchScore = { readonly kind: "no-such-score"; readonly part: GcsPart } & Limits;

/** Why there is no total: these parts stand in the way. */
export type NoTotal = {
  readonly kind: "no-total";
  readonly notTestable: readonly GcsPart[];
  readonly missing: readonly GcsPart[];
};

export type GcsSeverity = "mild" | "moderate" | "severe";

const PARTS = ["eye", "verbal", "motor"] as const;
const LIMITS: Readonly<Record<GcsPart, Limits>> = {
  eye: VITALS.gcsEye.limits,
  verbal: VITALS.gcsVerbal.limits,
  motor: VITALS.gcsMotor.limits,
};
const MILD_FROM = 13;
const MODERATE_FROM = 9;

/**
 * The one door into an examination: checks each part against its scale.
 *
 * @param said parts as recorded, scores or `not-testable`; those not examined are left out.
 * @returns    the same parts; or `no-such-score` with the first part that is not a whole number of its scale.
 *
 * Source: the scale: eye 1 to 4, verbal 1 to 5, motor 1 to 6; from memory.
 */
export function gcsParts(
  said: Readonly<Partial<Record<GcsPart, number | NotTestable | undefined>>>,
): Result<GcsParts, NoSuchScore> {
  for (const part of PARTS) {
    const value = said[part];
    const { min, max } = LIMITS[part];
    if (typeof value === "number" && !(Number.isInteger(value) && value >= min && value <= max))
      return fail({ kind: "no-such-score", part, min, max });
  }
  return ok(said as GcsParts);
}

/**
 * Total of an examination whose three parts were all scored.
 *
 * @param parts of `gcsParts`.
 * @returns     eye + verbal + motor, 3 to 15; or `no-total` naming the parts that could not be tested and those that were not
 *              examined.
 *
 * Not for: a total with a part guessed, left out or taken as 1.
 * Source: Glasgow coma scale, from memory.
 */
export function gcsTotal(parts: GcsParts): Result<Score, NoTotal> {
  const notTestable = PARTS.filter((part) => parts[part] === "not-testable");
  const missing = PARTS.filter((part) => parts[part] === undefined);
  if (notTestable.length + missing.length > 0) return fail({ kind: "no-total", notTestable, missing });
  return ok((Number(parts.eye) + Number(parts.verbal) + Number(parts.motor)) as Score);
}

/**
 * The customary class of an injury by the total.
 *
 * @param total of `gcsTotal`.
 * @returns     mild from 13, moderate from 9, severe under it.
 *
 * Not for: an examination without a total; a plan of treatment.
 * Source: the customary bands 13–15, 9–12 and 3–8, from memory.
 */
export function gcsSeverity(total: Score): GcsSeverity {
  if (total >= MILD_FROM) return "mild";
  return total >= MODERATE_FROM ? "moderate" : "severe";
}

/**
 * The total with the pupils taken off: GCS-P.
 *
 * @param total      of `gcsTotal`; where there is none, there is no GCS-P.
 * @param unreactive how many pupils do not react, of `pupilReactivityScore`.
 * @returns          GCS − PRS, 1 to 15.
 *
 * Not for: a forecast aloud.
 * Source: Brennan, Murray and Teasdale, J Neurosurg 2018.
 */
export const gcsPupils = (total: Score, unreactive: ReactivityScore): Score => (total - unreactive) as Score;
