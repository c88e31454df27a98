import type { MmHg, PerMin, Quantity, QuantityError, Years } from "./quantity.ts";
import { ok, type Result } from "./result.ts";
import { vitalQuantity } from "./vitalQuantity.ts";

// Three indices, three units: a limit of one says nothing about another.
export type ShockIndex = Quantity<"shock index">;
export type ModifiedShockIndex = Quantity<"modified shock index">;
export type AgeShockIndex = Quantity<"age shock index">;

/**
 * Shock index: how fast the heart must beat for the pressure there is.
 *
 * @param hrPerMin heart rate, per min.
 * @param sbpMmHg  systolic, mmHg.
 * @returns        HR / SBP, unrounded. Errors: `out-of-range` where the systolic is none that may be recorded.
 *
 * Not for: a patient on a beta blocker or with a pacemaker, whose rate cannot rise; a slow rate from rising ICP.
 * Source: Althunayyan SM, Bull Emerg Trauma 2019;7:21-27, HR / SBP.
 */
export function shockIndex(hrPerMin: PerMin, sbpMmHg: MmHg): Result<ShockIndex, QuantityError> {
  // The check keeps the quotient finite.
  const sbp = vitalQuantity("sbp", sbpMmHg);
  return sbp.ok ? ok((hrPerMin / sbp.value) as ShockIndex) : sbp;
}

/**
 * Modified shock index: the same with the mean pressure.
 *
 * @param hrPerMin heart rate, per min.
 * @param mapMmHg  mean arterial pressure, mmHg.
 * @returns        HR / MAP, unrounded. Errors: `out-of-range` where the mean is none that may be recorded.
 *
 * Not for: limits that were published for HR / SBP.
 * Source: HR / MAP, from memory.
 */
export function modifiedShockIndex(hrPerMin: PerMin, mapMmHg: MmHg): Result<ModifiedShockIndex, QuantityError> {
  const map = vitalQuantity("map", mapMmHg);
  return map.ok ? ok((hrPerMin / map.value) as ModifiedShockIndex) : map;
}

/**
 * Age shock index: the same index weighs more in the old.
 *
 * @param ageA  years.
 * @param index shock index.
 * @returns     age × HR / SBP, unrounded.
 *
 * Errors: none.
 * Not for: children.
 * Source: age × shock index, the form from memory; of the three it told best who died in one emergency department,
 * Am J Emerg Med 2019, PMID 31345593 (abstract).
 */
export const ageShockIndex = (ageA: Years, index: ShockIndex): AgeShockIndex => (ageA * index) as AgeShockIndex;
