import type { MmHg, PerMin } from "./quantity.ts";

const FRACTION_AT_REST = 0.33;
const FRACTION_PER_BEAT_PER_MIN = 0.0012;

/**
 * Mean arterial pressure with the heart rate taken into account, to set beside the one-third rule: as the heart beats
 * faster, diastole shortens and the mean moves up between diastolic and systolic.
 *
 * @param sbpMmHg  systolic, mmHg.
 * @param dbpMmHg  diastolic, mmHg, below the systolic.
 * @param hrPerMin heart rate, per min.
 * @returns        mmHg, unrounded. Always called computed.
 *
 * Errors: none.
 * Not for: standing in for a measured mean or for the one-third rule: it was derived from central aortic pressure.
 * Source: Razminia M et al., Catheter Cardiovasc Interv 2004;63:419-425 (abstract), DBP + [0.33 + 0.0012 × HR] × (SBP − DBP).
 */
export const meanArterialPressureWithRate = (sbpMmHg: MmHg, dbpMmHg: MmHg, hrPerMin: PerMin): MmHg =>
  (dbpMmHg + (FRACTION_AT_REST + FRACTION_PER_BEAT_PER_MIN * hrPerMin) * (sbpMmHg - dbpMmHg)) as MmHg;

export type MeanDisagreement = {
  /** Over zero: the computed mean is the higher one. */
  readonly byMmHg: MmHg;
  readonly exceeds: boolean;
};

/**
 * How far the mean worked out from a reading's systolic and diastolic lies from the mean measured with them. Far apart,
 * one of the three was misread or misheard, or the trace is damped.
 *
 * @param measuredMmHg the device's own mean, mmHg.
 * @param computedMmHg the mean computed from the same reading, mmHg.
 * @param limitMmHg    how far apart they may lie, mmHg.
 * @returns            computed − measured, mmHg, unrounded, and whether it is more than the limit in either direction.
 *
 * Errors: none.
 * Not for: means of different readings, or choosing between the two: the measured one stands.
 * Source: common practice, no source.
 */
export function meanDisagreement(measuredMmHg: MmHg, computedMmHg: MmHg, limitMmHg: MmHg): MeanDisagreement {
  const by = computedMmHg - measuredMmHg;
  return { exceeds: Math.abs(by) > limitMmHg, byMmHg: by as MmHg };
}
