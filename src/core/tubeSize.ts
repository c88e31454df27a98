import { completedYears } from "./age.ts";
import type { Cm, Mm, Years } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";

/** No tube of this inner diameter is made, or not for this use. */
export type NoSuchTube = { readonly kind: "no-such-tube"; readonly mm: number };

/** Tubes come in half millimetres between these. Source: common practice, no source. */
const STEP_MM = 0.5;
const SMALLEST_MM = 2;
const LARGEST_MM = 10;
const YEARS_PER_MM = 4;
const YEARS_PER_CM = 2;
const CM_PER_MM = 3;

/**
 * The tube nearest to a wished inner diameter. Halfway between two, the smaller one: a cuff can be filled, a tube that is
 * too wide does harm or does not pass.
 *
 * @param mm wished inner diameter, mm.
 * @returns  a multiple of 0.5, mm; or `no-such-tube` where that is under 2 or over 10 mm.
 *
 * Source: common practice, no source.
 */
export function nearestTube(mm: number): Result<Mm, NoSuchTube> {
  const size = Math.ceil(mm / STEP_MM - 0.5) * STEP_MM;
  return size >= SMALLEST_MM && size <= LARGEST_MM ? ok(size as Mm) : fail({ kind: "no-such-tube", mm });
}

/**
 * Inner diameter of a child's tube by age.
 *
 * @param ageA   age, years, from the second birthday on; completed years count.
 * @param plusMm what the protocol adds for a cuffed or an uncuffed tube, mm.
 * @returns      age / 4 + plus, mm, unrounded; `nearestTube` gives the one to take.
 *
 * Not for: children under two, adults.
 * Source: an explainer on children's tube sizes, which gives Cole's rule for uncuffed tubes and that form with 3.5 mm, after
 * Duracher, for cuffed ones.
 */
export const tubeSizeByAge = (ageA: Years, plusMm: number): Mm => (completedYears(ageA) / YEARS_PER_MM + plusMm) as Mm;

/**
 * The sizes to have ready beside a tube.
 *
 * @param smallestMm inner diameter of the tube, or of the smallest that may be chosen, mm.
 * @param largestMm  the same, or the largest that may be chosen, mm.
 * @param stepMm     how far off the spare ones are, mm.
 * @returns          the smaller and the larger one, mm, each the nearest that is made; one that is not made, or is no other
 *                   size, is left out.
 *
 * Source: an explainer on children's tube sizes: half a millimetre each way.
 */
export function spareTubes(smallestMm: Mm, largestMm: Mm, stepMm: number): readonly Mm[] {
  const spares = [nearestTube(smallestMm - stepMm), nearestTube(largestMm + stepMm)];
  return spares.flatMap((s) => (s.ok && (s.value < smallestMm || s.value > largestMm) ? [s.value] : []));
}

/**
 * Depth of a child's tube at the lip, by age.
 *
 * @param ageA   age, years, from the second birthday on; completed years count.
 * @param plusCm what the protocol adds, cm.
 * @returns      age / 2 + plus, cm, unrounded.
 *
 * Not for: children under two, adults, the nasal route; knowing where the tip is. Listen, and look at the film.
 * Source: from memory.
 */
export const tubeDepthByAge = (ageA: Years, plusCm: number): Cm => (completedYears(ageA) / YEARS_PER_CM + plusCm) as Cm;

/**
 * Depth of a child's tube at the lip, by the tube.
 *
 * @param sizeMm inner diameter, mm.
 * @returns      3 × ID, cm, unrounded.
 *
 * Not for: the nasal route; knowing where the tip is.
 * Source: a paediatrics teaching page.
 */
export const tubeDepthBySize = (sizeMm: Mm): Cm => (CM_PER_MM * sizeMm) as Cm;
