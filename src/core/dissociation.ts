import type { Fraction, Limits, MmHg } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";

// Severinghaus JW. J Appl Physiol 1979;46:599-602: equation 1 gives S from PO2, equation 2 PO2 from S.
const CUBIC_MMHG3 = 23_400;
const LINEAR_MMHG2 = 150;

const SLOPE = 0.385;
const OFFSET = 3.32;
const FOOT = 72;
const SHOULDER = 0.17;
const SHOULDER_POWER = 6;

/**
 * Where equations 1 and 2 agree within 0.0055, the error that is stated for equation 1. Nearer to 1 the curve is flat: a
 * saturation then says that the pressure is high and no more.
 */
const FITTED: Limits = { min: 0.3, max: 0.99 };

export type DissociationError = { readonly kind: "outside-fit" } & Limits;

/**
 * Saturation of haemoglobin at an oxygen pressure.
 *
 * @param po2MmHg oxygen pressure, mmHg; below zero counts as none.
 * @returns       1 / (23400 / (P³ + 150 P) + 1), a fraction, unrounded; within 0.0055 of the standard curve.
 *
 * Not for: blood that is not at 37 °C and pH 7.40; carboxyhaemoglobin or other abnormal haemoglobin.
 * Source: Severinghaus JW. J Appl Physiol 1979;46:599-602, equation 1.
 */
export function saturationAtPo2(po2MmHg: MmHg): Fraction {
  const p = Math.max(0, po2MmHg);
  const bound = p ** 3 + LINEAR_MMHG2 * p;
  // The same fraction, written without a division by zero at a pressure of zero.
  return (bound / (bound + CUBIC_MMHG3)) as Fraction;
}

/**
 * Oxygen pressure at a saturation.
 *
 * @param saturation a fraction, 0.9, never 90.
 * @returns          exp(0.385 ln(S / (1 − S)) + 3.32 − 1 / (72 S) − 0.17 S⁶), mmHg, unrounded. It was fitted to the standard
 *                   curve by itself: from 0.90 to 0.96, where it is asked, it lies closer than the algebraic inverse of
 *                   equation 1; at 0.975 it is 3.6 mmHg low.
 *
 * Errors: `outside-fit` below 0.30 and above 0.99, with these limits.
 * Not for: undoing `saturationAtPo2` (the way there and back is up to 0.0055 off); telling how well oxygenated a patient at
 * 100 % is; blood that is not at 37 °C and pH 7.40.
 * Source: Severinghaus JW. J Appl Physiol 1979;46:599-602, equation 2, with 0.17 S⁶.
 */
export function po2AtSaturation(saturation: Fraction): Result<MmHg, DissociationError> {
  if (saturation < FITTED.min || saturation > FITTED.max) return fail({ kind: "outside-fit", ...FITTED });
  const lnPo2 =
    SLOPE * Math.log(saturation / (1 - saturation)) +
    OFFSET -
    1 / (FOOT * saturation) -
    SHOULDER * saturation ** SHOULDER_POWER;
  return ok(Math.exp(lnPo2) as MmHg);
}
