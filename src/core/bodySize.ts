import type { Cm, Kg } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";

declare const coveredTag: unique symbol;

/** Which of the two published equations counts. */
export type Sex = "female" | "male";

/** A height that the adult formulas cover; made by `formulaHeight` alone. */
export type FormulaCm = Cm & { readonly [coveredTag]: true };

export type BelowFormulaHeight = {
  readonly kind: "below-formula-height";
  readonly heightCm: Cm;
  /** The lowest height that the formulas cover. */
  readonly fromCm: number;
};

/** Both formulas are anchored here, at 60 inches; under it they only fall on in a straight line. */
const FORMULA_FROM_CM = 152.4;
const CM_PER_IN = 2.54;
const KG_AT_60_IN = { male: 50, female: 45.5 } as const;
const KG_PER_IN = 2.3;
const KG_PER_CM = 0.91;

/**
 * The one door into the adult formulas by height.
 *
 * @param heightCm height, cm.
 * @returns        the same height, unrounded; or `below-formula-height` under 152.4 cm.
 *
 * Not for: telling a child from an adult. A tall child passes; the caller knows the age.
 * Source: common practice, no source; 60 inches is where both formulas are anchored.
 */
export function formulaHeight(heightCm: Cm): Result<FormulaCm, BelowFormulaHeight> {
  if (heightCm < FORMULA_FROM_CM) return fail({ kind: "below-formula-height", heightCm, fromCm: FORMULA_FROM_CM });
  return ok(heightCm as FormulaCm);
}

/**
 * Ideal weight of an adult, for doses whose protocol asks for it.
 *
 * @param heightCm height, cm, of `formulaHeight`.
 * @param sex      which equation.
 * @returns        50 (men) or 45.5 (women) + 2.3 × (in − 60), kg, unrounded.
 *
 * Not for: children; tidal volumes, which go by `predictedWeight`.
 * Source: Devine 1974, the inch form, from memory.
 */
export const idealWeight = (heightCm: FormulaCm, sex: Sex): Kg =>
  (KG_AT_60_IN[sex] + KG_PER_IN * (heightCm / CM_PER_IN - 60)) as Kg;

/**
 * Predicted weight of an adult, for tidal volumes.
 *
 * @param heightCm height, cm, of `formulaHeight`.
 * @param sex      which equation.
 * @returns        50 (men) or 45.5 (women) + 0.91 × (cm − 152.4), kg, unrounded.
 *
 * Not for: children; doses. It runs 0.1 kg over the inch form at 178 cm: do not exchange one for the other.
 * Source: ARDS Network, the centimetre form, from memory.
 */
export const predictedWeight = (heightCm: FormulaCm, sex: Sex): Kg =>
  (KG_AT_60_IN[sex] + KG_PER_CM * (heightCm - FORMULA_FROM_CM)) as Kg;
