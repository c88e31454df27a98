import type { MmHg } from "./quantity.ts";

// All results are unrounded mmHg: round where a number is shown or spoken, not here. None of these can fail: their inputs
// are already checked, and the order of systolic and diastolic is checked by `pressureOrder`.

/**
 * Mean arterial pressure of a systolic and a diastolic, when no mean was measured.
 *
 * @param sbpMmHg systolic, mmHg.
 * @param dbpMmHg diastolic, mmHg, below the systolic.
 * @returns       mmHg, unrounded. Always called computed.
 *
 * Not for: replacing a measured mean; the monitor's own is better.
 * Source: one-third rule, DBP + (SBP − DBP) / 3, a standard form from memory. It reads 5.0 mmHg low on average (± 6.7,
 * 1.96 SD) against tonometry, PMID 32694334 (abstract).
 */
export const meanArterialPressure = (sbpMmHg: MmHg, dbpMmHg: MmHg): MmHg => (dbpMmHg + (sbpMmHg - dbpMmHg) / 3) as MmHg;

/**
 * Pulse pressure: how far systolic stands above diastolic.
 *
 * @param sbpMmHg systolic, mmHg.
 * @param dbpMmHg diastolic, mmHg.
 * @returns       mmHg, unrounded.
 *
 * Not for: halves of different readings.
 * Source: definition, SBP − DBP; from memory.
 */
export const pulsePressure = (sbpMmHg: MmHg, dbpMmHg: MmHg): MmHg => (sbpMmHg - dbpMmHg) as MmHg;

/**
 * Cerebral perfusion pressure from a mean pressure and a measured intracranial pressure.
 *
 * @param mapMmHg mean arterial pressure, mmHg.
 * @param icpMmHg measured intracranial pressure, mmHg, zeroed at the same level as the mean.
 * @returns       mmHg, unrounded; negative when ICP exceeds MAP.
 *
 * Not for: an assumed ICP; without a measured one there are only `icpAtWhichCppMeets` and `cppRange`. Not for saying
 * whether the two were zeroed at one level; see `levelledCpp`.
 * Source: MAP − ICP; NACCS and SBNS joint position statement, Br J Anaesth 2015.
 */
export const cerebralPerfusionPressure = (mapMmHg: MmHg, icpMmHg: MmHg): MmHg => (mapMmHg - icpMmHg) as MmHg;

/**
 * The mean pressure that a perfusion target asks for.
 *
 * @param cppTargetMmHg wanted perfusion pressure, mmHg.
 * @param icpMmHg       measured intracranial pressure, mmHg.
 * @returns             mmHg, unrounded.
 *
 * Not for: an assumed ICP.
 * Source: CPP target + ICP; algebra of CPP = MAP − ICP.
 */
export const mapForCpp = (cppTargetMmHg: MmHg, icpMmHg: MmHg): MmHg => (cppTargetMmHg + icpMmHg) as MmHg;

/**
 * The honest bound while ICP is not measured: perfusion is under target whenever ICP is over this.
 *
 * @param mapMmHg       mean arterial pressure, mmHg.
 * @param cppTargetMmHg wanted perfusion pressure, mmHg.
 * @returns             mmHg, unrounded. At zero or below, perfusion is under target whatever the ICP.
 *
 * Not for: a measured ICP; then there is a CPP.
 * Source: MAP − CPP target; algebra of CPP = MAP − ICP.
 */
export const icpAtWhichCppMeets = (mapMmHg: MmHg, cppTargetMmHg: MmHg): MmHg => (mapMmHg - cppTargetMmHg) as MmHg;

/**
 * How far a value is below its target.
 *
 * @param value  in the unit of the target.
 * @param target a floor.
 * @returns      target − value; 0 when the target is met.
 *
 * Not for: ceilings, such as that of EtCO2.
 * Source: arithmetic.
 */
export const deficit = (value: number, target: number): number => Math.max(0, target - value);

/**
 * How far the mean pressure may fall before MAP or, with a measured ICP, CPP leaves its target.
 *
 * @param mapMmHg       mean arterial pressure, mmHg.
 * @param mapTargetMmHg floor of the mean, mmHg.
 * @param cpp           measured perfusion pressure and its floor, mmHg; left out without a measured ICP.
 * @returns             the smaller of the two distances, mmHg, unrounded; 0 when one is already below target.
 *
 * Not for: how fast the pressure falls.
 * Source: arithmetic; a fall of the mean lowers both by the same amount.
 */
export function perfusionMargin(
  mapMmHg: MmHg,
  mapTargetMmHg: MmHg,
  cpp?: { readonly cppMmHg: MmHg; readonly targetMmHg: MmHg },
): MmHg {
  const aboveMap = mapMmHg - mapTargetMmHg;
  const aboveCpp = cpp === undefined ? aboveMap : cpp.cppMmHg - cpp.targetMmHg;
  return Math.max(0, Math.min(aboveMap, aboveCpp)) as MmHg;
}
