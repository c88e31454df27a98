import { vitalQuantity } from "./vitalQuantity.ts";
import type { VitalCode } from "./vitals.ts";

/**
 * Whether a value may be recorded for this vital at all.
 *
 * @param value in the vital's stored unit.
 * @returns     true within the entry limits of `VITALS`, ends included; false also for what is not a number.
 *
 * Not for: whether a value is good or bad for the patient.
 * Source: the limits are this project's check against mishearing.
 */
export const withinLimits = (code: VitalCode, value: number): boolean => vitalQuantity(code, value).ok;

export type Pressures = {
  readonly sbp?: number | undefined;
  readonly dbp?: number | undefined;
  readonly map?: number | undefined;
};

/**
 * Whether pressures of one reading can belong together: diastolic under mean under systolic.
 *
 * @param pressures mmHg; those that were not given are left out of the comparison.
 * @returns         false when two of them are equal or the wrong way round.
 *
 * Not for: pressures of different readings.
 * Source: common practice, no source; it follows from what the three are.
 */
export function pressureOrder(pressures: Pressures): boolean {
  const given = [pressures.dbp, pressures.map, pressures.sbp].filter((p) => p !== undefined);
  return given.every((p, i) => {
    const higher = given[i + 1];
    return higher === undefined || p < higher;
  });
}
