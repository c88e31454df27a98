import type { Kg, LPerMin, Ml, MlPerKg, PerMin } from "./quantity.ts";

const ML_PER_L = 1000;

/**
 * Tidal volume from predicted weight.
 *
 * @param perKg       mL/kg, from the protocol.
 * @param predictedKg predicted body weight, kg: lungs grow with height, not with weight.
 * @returns           mL/kg × predicted weight, mL, unrounded.
 *
 * Not for: the actual weight, which gives the heavy too large a breath.
 * Source: common practice, no source.
 */
export const tidalVolume = (perKg: MlPerKg, predictedKg: Kg): Ml => (perKg * predictedKg) as Ml;

/**
 * The tidal volumes that a range of mL/kg allows.
 *
 * @param perKg       both ends, mL/kg, the low one first.
 * @param predictedKg predicted body weight, kg.
 * @returns           `tidalVolume` at both ends, mL, unrounded.
 *
 * Source: as for `tidalVolume`.
 */
export const tidalVolumeRange = (
  perKg: { readonly low: MlPerKg; readonly high: MlPerKg },
  predictedKg: Kg,
): { readonly lowMl: Ml; readonly highMl: Ml } => ({
  lowMl: tidalVolume(perKg.low, predictedKg),
  highMl: tidalVolume(perKg.high, predictedKg),
});

/**
 * Part of each breath that meets no blood.
 *
 * @param perKg   mL/kg, from the protocol.
 * @param idealKg ideal body weight, kg.
 * @returns       mL/kg × ideal weight, mL, unrounded.
 *
 * Not for: the dead space of a shocked or obstructed lung, or of tubing: both are larger.
 * Source: from memory.
 */
export const deadSpace = (perKg: MlPerKg, idealKg: Kg): Ml => (perKg * idealKg) as Ml;

/**
 * Gas moved in a minute.
 *
 * @param ratePerMin breaths/min.
 * @param tidalMl    mL.
 * @returns          RR × VT, L/min, unrounded.
 *
 * Source: definition.
 */
export const minuteVolume = (ratePerMin: PerMin, tidalMl: Ml): LPerMin =>
  ((ratePerMin * tidalMl) / ML_PER_L) as LPerMin;

/**
 * Gas that reaches alveoli in a minute.
 *
 * @param ratePerMin  breaths/min.
 * @param tidalMl     mL.
 * @param deadSpaceMl mL.
 * @returns           RR × (VT − VD), L/min, unrounded; 0 when a breath is no larger than the dead space.
 *
 * Not for: high-frequency ventilation, which moves gas by other means.
 * Source: standard form, from memory.
 */
export const alveolarVentilation = (ratePerMin: PerMin, tidalMl: Ml, deadSpaceMl: Ml): LPerMin =>
  ((ratePerMin * Math.max(0, tidalMl - deadSpaceMl)) / ML_PER_L) as LPerMin;
