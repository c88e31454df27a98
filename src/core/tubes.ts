import { completedYears } from "./age.ts";
import type { Sex } from "./bodySize.ts";
import type { Cm, Kg, Mm, Years } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";
import {
  nearestTube,
  spareTubes,
  tubeDepthByAge,
  tubeDepthBySize,
  tubeSizeByAge,
  type NoSuchTube,
} from "./tubeSize.ts";

/** Numbers of a validated protocol. */
export type ChildTubeRules = {
  readonly childCuffedPlusMm: number;
  readonly childUncuffedPlusMm: number;
  readonly childDepthPlusCm: number;
  /** Cuffed tube of the first and of the second year of life; the first only from a weight on. */
  readonly infantMm: number;
  readonly infantFromKg: number;
  readonly oneYearOldMm: number;
  readonly spareStepMm: number;
};

export type ChildTube = {
  readonly cuffedMm: Mm;
  /** Beside the cuffed tube. */
  readonly sparesMm: readonly Mm[];
  readonly depthBySizeCm: Cm;
  /** From the second birthday on, where the rules by age begin. */
  readonly byAge?: { readonly uncuffedMm: Mm; readonly depthCm: Cm };
  /** The size holds only from this weight on; there in infants alone. */
  readonly onlyFromKg?: Kg;
};

/** Too light for the size of an infant: the protocol has no tube for this child. */
export type BelowInfantWeight = { readonly kind: "below-infant-weight"; readonly fromKg: number };

/** The rules by age begin here, in completed years. */
const BY_AGE_FROM_A = 2;

/**
 * Which tube a child needs, and how deep.
 *
 * @param child age in years; weight in kg, where known.
 * @param rules numbers of the protocol.
 * @returns     sizes that are made, mm, and depths at the lip, cm, unrounded; or `no-such-tube` where the rules lead to none,
 *              or `below-infant-weight`.
 *
 * Not for: adults; choosing between cuffed and uncuffed.
 * Source: as for `tubeSizeByAge`, `tubeDepthByAge` and `tubeDepthBySize`; sizes under two years come from the protocol.
 */
export function childTube(
  child: { readonly ageA: Years; readonly weightKg?: Kg | undefined },
  rules: ChildTubeRules,
): Result<ChildTube, NoSuchTube | BelowInfantWeight> {
  const age = completedYears(child.ageA);
  if (age < 1) return infantTube(child.weightKg, rules);
  if (age < BY_AGE_FROM_A) return cuffedTube(rules.oneYearOldMm, rules);
  const cuffed = cuffedTube(tubeSizeByAge(child.ageA, rules.childCuffedPlusMm), rules);
  const uncuffed = nearestTube(tubeSizeByAge(child.ageA, rules.childUncuffedPlusMm));
  if (!cuffed.ok) return cuffed;
  if (!uncuffed.ok) return uncuffed;
  const depthCm = tubeDepthByAge(child.ageA, rules.childDepthPlusCm);
  return ok({ ...cuffed.value, byAge: { uncuffedMm: uncuffed.value, depthCm } });
}

function infantTube(
  weightKg: Kg | undefined,
  rules: ChildTubeRules,
): Result<ChildTube, NoSuchTube | BelowInfantWeight> {
  const fromKg = rules.infantFromKg;
  if (weightKg !== undefined && weightKg < fromKg) return fail({ kind: "below-infant-weight", fromKg });
  const tube = cuffedTube(rules.infantMm, rules);
  return tube.ok ? ok({ ...tube.value, onlyFromKg: fromKg as Kg }) : tube;
}

function cuffedTube(mm: number, { spareStepMm }: ChildTubeRules): Result<ChildTube, NoSuchTube> {
  const size = nearestTube(mm);
  if (!size.ok) return size;
  const cuffedMm = size.value;
  const sparesMm = spareTubes(cuffedMm, cuffedMm, spareStepMm);
  return ok({ cuffedMm, sparesMm, depthBySizeCm: tubeDepthBySize(cuffedMm) });
}

type ByRange = { readonly sizeMm: { readonly low: number; readonly high: number }; readonly depthCm: number };
/** Numbers of a validated protocol. */
export type AdultTubeRules = { readonly female: ByRange; readonly male: ByRange; readonly spareStepMm: number };

export type AdultTube = {
  readonly sizeMm: { readonly low: Mm; readonly high: Mm };
  /** One under the range and one over it. */
  readonly sparesMm: readonly Mm[];
  /** At the incisors. */
  readonly depthCm: Cm;
};

/**
 * Which tube an adult needs, and how deep.
 *
 * @param sex   whose range counts.
 * @param rules numbers of the protocol.
 * @returns     the range of sizes, mm, its ends as the nearest that are made, and the depth at the incisors, cm; or
 *              `no-such-tube`.
 *
 * Not for: children; the nasal route; knowing where the tip is.
 * Source: the numbers are the protocol's.
 */
export function adultTube(sex: Sex, rules: AdultTubeRules): Result<AdultTube, NoSuchTube> {
  const { sizeMm, depthCm } = rules[sex];
  const low = nearestTube(sizeMm.low);
  const high = nearestTube(sizeMm.high);
  if (!low.ok) return low;
  if (!high.ok) return high;
  const sparesMm = spareTubes(low.value, high.value, rules.spareStepMm);
  return ok({ sizeMm: { low: low.value, high: high.value }, sparesMm, depthCm: depthCm as Cm });
}
