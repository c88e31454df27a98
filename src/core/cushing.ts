import { pulsePressure } from "./pressure.ts";
import type { MmHg, Percent, PerMin } from "./quantity.ts";
import { hasChangedByPct } from "./trendSince.ts";

export type PressureAndRate = { readonly sbpMmHg: MmHg; readonly dbpMmHg: MmHg; readonly hrPerMin: PerMin };

export type CushingLimits = {
  readonly sbpRisePct: Percent;
  readonly hrFallPct: Percent;
  readonly hrBelowPerMin: PerMin;
};

export type CushingPattern = {
  readonly sbpRose: boolean;
  readonly pulsePressureWidened: boolean;
  /** Either of the two is enough. */
  readonly hrLow: boolean;
  readonly hrFell: boolean;
  readonly neuroWorse: boolean;
  /** Pressure and rate show the pattern, whatever the neurological examination. */
  readonly fires: boolean;
  /** The pattern together with a worse examination: the moment to ask about it. */
  readonly asks: boolean;
};

/**
 * Whether pressure and heart rate have moved as they do when the brainstem is pressed upon: systolic up, pulse pressure
 * wider, and the heart slow or slower.
 *
 * @param first      the first pressures, mmHg, and heart rate, /min, each pair diastolic under systolic.
 * @param now        those of now.
 * @param limits     rise of the systolic and fall of the rate in per cent of the first values, limits included; the rate,
 *                   /min, under which the heart is slow, limit not included.
 * @param neuroWorse Glasgow score or a pupil is worse than at the first examination; see `neuroChange`.
 * @returns          which parts hold, and whether they hold together.
 *
 * Errors: none.
 * Not for: ruling it out; it comes late and is often incomplete. Not for treating the pressure, which may be what keeps the
 * brain perfused. A slow heart has other causes: drugs, hypoxia, the laryngoscope.
 * Source: common practice, no source; the pattern itself is textbook knowledge.
 */
export function cushingPattern(
  first: PressureAndRate,
  now: PressureAndRate,
  limits: CushingLimits,
  neuroWorse: boolean,
): CushingPattern {
  const sbpRose = hasChangedByPct("rise", first.sbpMmHg, now.sbpMmHg, limits.sbpRisePct);
  const pulsePressureWidened = pulsePressure(now.sbpMmHg, now.dbpMmHg) > pulsePressure(first.sbpMmHg, first.dbpMmHg);
  const hrLow = now.hrPerMin < limits.hrBelowPerMin;
  const hrFell = hasChangedByPct("fall", first.hrPerMin, now.hrPerMin, limits.hrFallPct);
  const fires = sbpRose && pulsePressureWidened && (hrLow || hrFell);
  return { sbpRose, pulsePressureWidened, hrLow, hrFell, neuroWorse, fires, asks: fires && neuroWorse };
}
