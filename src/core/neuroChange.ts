import { gcsTotal, type GcsParts } from "./gcs.ts";
import { pupilsUnequal, type Pupil, type Pupils, type Side } from "./pupils.ts";
import type { Mm, Score } from "./quantity.ts";

/** One neurological examination. */
export type NeuroExam = { readonly gcs: GcsParts; readonly pupils: Pupils };

export type NeuroLimits = {
  /** A fall of the total counts from this many points on, when the total was under `fromUnder` before. */
  readonly gcsFall: { readonly points: Score; readonly fromUnder: Score };
  /** Pupils further apart than this are unequal. */
  readonly pupilDifferenceMm: Mm;
};

export type NeuroChange = {
  /** The fall of the total that the limits describe. */
  readonly gcsFell: boolean;
  readonly motorFell: boolean;
  readonly pupilsNewlyUnequal: boolean;
  readonly newlyFixed: readonly Side[];
  /** One of the above. */
  readonly fires: boolean;
  /** One of the above, or any fall of the total at all. */
  readonly worse: boolean;
};

function totalOf({ gcs }: NeuroExam): number | undefined {
  const total = gcsTotal(gcs);
  return total.ok ? total.value : undefined;
}

/** Any fall; none where one of the two examinations has no motor score. */
function motorFellBetween({ gcs: { motor: before } }: NeuroExam, { gcs: { motor: now } }: NeuroExam): boolean {
  return typeof before === "number" && typeof now === "number" && now < before;
}

/**
 * A pupil whose size alone was said counts as one that reacted: nobody leaves "fixed" unsaid, and to miss one that has just
 * become fixed is worse than to ask.
 */
const reacted = (pupil: Pupil | undefined): boolean =>
  pupil?.reaction === undefined ? pupil?.sizeMm !== undefined : pupil.reaction !== "fixed";

/**
 * What got worse between two neurological examinations. Only what was seen in both can have changed: a pupil found fixed
 * that nobody looked at before is a finding, not a change.
 *
 * @param before the earlier examination: parts of the Glasgow scale, and the pupils, mm.
 * @param now    the later one.
 * @param limits the fall of the total that counts, points; the difference between the pupils, mm, not included.
 * @returns      what changed. `fires` is for a sign of herniation, `worse` for the company of another sign. A total with a
 *               part that was not testable has not fallen.
 *
 * Errors: none.
 * Not for: a diagnosis; drugs, seizures, low pressure and low sugar do the same. Not for a sedated or paralysed patient,
 * whose scores are not testable.
 * Source: textbook knowledge of signs of herniation, from memory. That any fall of the motor score counts, and that a
 * change needs two sightings, are this project's choices.
 */
export function neuroChange(before: NeuroExam, now: NeuroExam, limits: NeuroLimits): NeuroChange {
  const [totalBefore, totalNow] = [totalOf(before), totalOf(now)];
  const totalFall = totalBefore === undefined || totalNow === undefined ? 0 : totalBefore - totalNow;
  const { points, fromUnder } = limits.gcsFall;
  // A limit of 0 points would otherwise call an unchanged total a fall.
  const gcsFell = totalFall > 0 && totalFall >= points && totalBefore !== undefined && totalBefore < fromUnder;
  const motorFell = motorFellBetween(before, now);
  const [wereUnequal, areUnequal] = [before, now].map(({ pupils }) => pupilsUnequal(pupils, limits.pupilDifferenceMm));
  const pupilsNewlyUnequal = wereUnequal === false && areUnequal === true;
  const sides: readonly Side[] = ["left", "right"];
  const newlyFixed = sides.filter((side) => reacted(before.pupils[side]) && now.pupils[side]?.reaction === "fixed");
  const fires = gcsFell || motorFell || pupilsNewlyUnequal || newlyFixed.length > 0;
  return { gcsFell, motorFell, pupilsNewlyUnequal, newlyFixed, fires, worse: fires || totalFall > 0 };
}
