import type { MotorScore, NotTestable } from "./gcs.ts";
import { pupilsUnequal, type Pupil, type Pupils } from "./pupils.ts";
import type { MmHg, MmolPerL, Percent } from "./quantity.ts";

export type HerniationSign =
  | "one-pupil-dilated-or-fixed"
  | "both-pupils-dilated-or-fixed"
  | "pupils-unequal"
  | "extensor-posturing"
  | "no-motor-response"
  | "gcs-fall"
  | "cushing-pattern"
  | "abnormal-breathing";

/** What else could make the same signs. */
export type Confounder = "pupil-drugs" | "eye-injury" | "hypoxia" | "hypotension" | "hypoglycaemia" | "seizure";

/** What was found. What was not examined or asked is left out; that is not the same as false. */
export type HerniationFindings = {
  readonly pupils?: Pupils | undefined;
  /** Not testable once paralysed. */
  readonly motor?: MotorScore | NotTestable | undefined;
  /** The total fell as far as the protocol asks, from under the total it names. */
  readonly gcsFell?: boolean | undefined;
  readonly cushingPattern?: boolean | undefined;
  readonly abnormalBreathing?: boolean | undefined;
  /** Atropine, drops that widen pupils, opioids. */
  readonly pupilDrugs?: boolean | undefined;
  readonly eyeInjury?: boolean | undefined;
  readonly seizure?: boolean | undefined;
  readonly spo2Pct?: Percent | undefined;
  readonly sbpMmHg?: MmHg | undefined;
  readonly glucoseMmolPerL?: MmolPerL | undefined;
};

/** Numbers of a validated protocol. */
export type HerniationLimits = {
  /** A pupil this wide or wider is dilated. */
  readonly dilatedFromMm: number;
  /** Pupils further apart than this are unequal. */
  readonly pupilDifferenceMm: number;
  readonly hypoxiaBelowPct: number;
  readonly hypotensionBelowMmHg: number;
  readonly hypoglycaemiaBelowMmolPerL: number;
};

export type HerniationReview = {
  readonly signs: readonly HerniationSign[];
  /** Present: to be put right or thought of before the signs are given a name. */
  readonly confounders: readonly Confounder[];
  /** Neither found nor ruled out: ask. */
  readonly toAsk: readonly Confounder[];
};

/**
 * Which signs of herniation were found, and what else could have made them.
 *
 * @param findings sizes in mm, pressure in mmHg, glucose in mmol/L.
 * @param limits   numbers of the protocol.
 * @returns        the signs present, the confounders present and those still to ask about, each in a fixed order. A finding
 *                 that was not made is no sign.
 *
 * Not for: a diagnosis. Without a sign herniation is not ruled out; with one it is not proven.
 * Source: the customary list, from memory; all of it but the fall of the total is in a table of Arch Dis Child.
 */
export function herniationSigns(findings: HerniationFindings, limits: HerniationLimits): HerniationReview {
  const { pupils = {}, motor } = findings;
  const abnormal = [pupils.left, pupils.right].filter((p) => isDilatedOrFixed(p, limits.dilatedFromMm)).length;
  const signs: Record<HerniationSign, boolean | undefined> = {
    "one-pupil-dilated-or-fixed": abnormal === 1,
    "both-pupils-dilated-or-fixed": abnormal === 2,
    "pupils-unequal": pupilsUnequal(pupils, limits.pupilDifferenceMm),
    "extensor-posturing": motor === 2,
    "no-motor-response": motor === 1,
    "gcs-fall": findings.gcsFell,
    "cushing-pattern": findings.cushingPattern,
    "abnormal-breathing": findings.abnormalBreathing,
  };
  const confounders: Record<Confounder, boolean | undefined> = {
    "pupil-drugs": findings.pupilDrugs,
    "eye-injury": findings.eyeInjury,
    hypoxia: isBelow(findings.spo2Pct, limits.hypoxiaBelowPct),
    hypotension: isBelow(findings.sbpMmHg, limits.hypotensionBelowMmHg),
    hypoglycaemia: isBelow(findings.glucoseMmolPerL, limits.hypoglycaemiaBelowMmolPerL),
    seizure: findings.seizure,
  };
  return {
    signs: keysThatAre(true, signs),
    confounders: keysThatAre(true, confounders),
    toAsk: keysThatAre(undefined, confounders),
  };
}

const isDilatedOrFixed = (pupil: Pupil | undefined, dilatedFromMm: number): boolean =>
  pupil?.reaction === "fixed" || (pupil?.sizeMm !== undefined && pupil.sizeMm >= dilatedFromMm);

const isBelow = (value: number | undefined, limit: number): boolean | undefined =>
  value === undefined ? undefined : value < limit;

const keysThatAre = <K extends string>(
  wanted: true | undefined,
  found: Readonly<Record<K, boolean | undefined>>,
): readonly K[] => (Object.keys(found) as K[]).filter((key) => found[key] === wanted);
