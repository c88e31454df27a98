import { mapAtBrainLevelMmHg } from "./hydrostatic.ts";
import { cerebralPerfusionPressure } from "./pressure.ts";
import type { Cm, MmHg } from "./quantity.ts";

/** Where a mean was zeroed. `cuff`: on an arm, which is taken to lie at the level of the heart. */
export type MeanLevel = "tragus" | "heart" | "cuff";

export type LevelledMean = { readonly mapMmHg: MmHg; readonly level: MeanLevel };

export type LevelledCpp = {
  readonly cppMmHg: MmHg;
  /** That of the mean; an ICP is zeroed at the tragus. */
  readonly mapLevel: MeanLevel;
  /** False: with the head up, the brain has less than this number says. */
  readonly levelsAgree: boolean;
  /** What the number would be about, were the mean zeroed at the tragus. Shown beside it, never in its place. */
  readonly aboutAtBrainMmHg?: MmHg;
};

/**
 * Perfusion pressure that keeps where its mean was zeroed.
 *
 * @param mean              mean arterial pressure, mmHg, with its level.
 * @param icpMmHg           measured intracranial pressure, mmHg, zeroed at the tragus.
 * @param tragusAboveZeroCm how far the tragus stands above the level of the mean, cm; left out where nobody said it.
 * @returns                 MAP − ICP as measured, mmHg, unrounded; whether the levels agree; and, where they do not and the
 *                          height is known, about what it is at the brain.
 *
 * Errors: none.
 * Not for: an assumed ICP. Not for putting the corrected value in place of the measured one.
 * Source: NACCS and SBNS joint position statement, Br J Anaesth 2015: for perfusion pressure the arterial transducer is
 * zeroed at the tragus, and the level is reported.
 */
export function levelledCpp(mean: LevelledMean, icpMmHg: MmHg, tragusAboveZeroCm?: Cm): LevelledCpp {
  const levelsAgree = mean.level === "tragus";
  const measured = { cppMmHg: cerebralPerfusionPressure(mean.mapMmHg, icpMmHg), mapLevel: mean.level, levelsAgree };
  if (levelsAgree || tragusAboveZeroCm === undefined) return measured;
  const atBrainMmHg = mapAtBrainLevelMmHg(mean.mapMmHg, tragusAboveZeroCm);
  return { ...measured, aboutAtBrainMmHg: cerebralPerfusionPressure(atBrainMmHg, icpMmHg) };
}
