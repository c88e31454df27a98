import type { Mm } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";

export type PupilReaction = "reactive" | "brisk" | "sluggish" | "fixed";
/** How many pupils do not react. */
export type ReactivityScore = 0 | 1 | 2;
export type Side = "left" | "right";

/** One pupil as examined; what was not looked at is left out. */
export type Pupil = { readonly sizeMm?: Mm | undefined; readonly reaction?: PupilReaction | undefined };
export type Pupils = { readonly left?: Pupil | undefined; readonly right?: Pupil | undefined };

/** The reaction of these pupils is not known. */
export type ReactionUnknown = { readonly kind: "reaction-unknown"; readonly sides: readonly Side[] };

const SIDES = ["left", "right"] as const;
/** What a subtraction of two tenths of a millimetre may be off by. */
const LOST_MM = 1e-9;

/**
 * How far the two pupils differ in size.
 *
 * @param leftMm  mm.
 * @param rightMm mm.
 * @returns       the larger less the smaller, mm, unrounded.
 *
 * Source: definition.
 */
export const pupilDifference = (leftMm: Mm, rightMm: Mm): Mm => Math.abs(leftMm - rightMm) as Mm;

/**
 * Whether two pupils are unequal.
 *
 * @param pupils  as examined, mm.
 * @param limitMm the difference that still counts as equal, mm, from the protocol.
 * @returns       true over the limit, false at it; nothing where a size is not known.
 *
 * Not for: a cause; some people's pupils always differ.
 * Source: the limit is the protocol's.
 */
export function pupilsUnequal({ left, right }: Pupils, limitMm: number): boolean | undefined {
  if (left?.sizeMm === undefined || right?.sizeMm === undefined) return undefined;
  return pupilDifference(left.sizeMm, right.sizeMm) > limitMm + LOST_MM;
}

/**
 * Pupil reactivity score.
 *
 * @param pupils as examined. A sluggish pupil still reacts.
 * @returns      0, 1 or 2 pupils that do not react; or `reaction-unknown` with the sides not examined.
 *
 * Not for: a reaction guessed from the size.
 * Source: Brennan, Murray and Teasdale, J Neurosurg 2018.
 */
export function pupilReactivityScore(pupils: Pupils): Result<ReactivityScore, ReactionUnknown> {
  const sides = SIDES.filter((side) => pupils[side]?.reaction === undefined);
  if (sides.length > 0) return fail({ kind: "reaction-unknown", sides });
  return ok(SIDES.filter((side) => pupils[side]?.reaction === "fixed").length as ReactivityScore);
}
