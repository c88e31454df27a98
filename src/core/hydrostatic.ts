import { GRAVITY_M_PER_S2, PA_PER_MMHG } from "./physicalConstants.ts";
import { quantityOf, type Cm, type Degrees, type MmHg } from "./quantity.ts";

// All of these give an "about". The joint position statement of NACCS and SBNS (Br J Anaesth 2015) warns that a full water
// column overstates the effect by a factor below one that nobody can know for the patient at hand.

const BLOOD_KG_PER_M3 = 1060;
const CM_PER_M = 100;
const DEGREES_PER_HALF_TURN = 180;

/** How far one point of the body stands above another, cm; negative below it. Limits: this project's check. */
export const verticalCm = quantityOf<"cm">({ min: -100, max: 100 });
/** From the level of the heart to the tragus along a straight back, cm. Limits: this project's check. */
export const torsoCm = quantityOf<"cm">({ min: 0, max: 100 });
/** How far the back is raised, degrees; negative with the head down. Limits: this project's check. */
export const tiltDeg = quantityOf<"deg">({ min: -45, max: 90 });

/**
 * Pressure of a standing column of blood.
 *
 * @param heightCm vertical height, cm; negative below.
 * @returns        mmHg, unrounded; negative below.
 *
 * Errors: none.
 * Not for: lengths along a sloping body; see `verticalHeightCm`.
 * Source: density × g × height with blood at 1.06 g/mL, from memory: 0.780 mmHg for each cm.
 */
export const hydrostaticMmHg = (heightCm: Cm): MmHg =>
  ((BLOOD_KG_PER_M3 * GRAVITY_M_PER_S2 * heightCm) / CM_PER_M / PA_PER_MMHG) as MmHg;

/**
 * How far the tragus stands above the heart when the whole back is raised.
 *
 * @param torso length from heart to tragus along the back, cm.
 * @param tilt  of the back from flat, degrees.
 * @returns     cm, unrounded; negative with the head down.
 *
 * Errors: none.
 * Not for: a bed that bends, or a head on a pillow: measure the height.
 * Source: length × sin(angle), geometry, from memory.
 */
export const verticalHeightCm = (torso: Cm, tilt: Degrees): Cm =>
  (torso * Math.sin((tilt * Math.PI) / DEGREES_PER_HALF_TURN)) as Cm;

/**
 * About what a mean zeroed at the heart would read at the tragus.
 *
 * @param mapMmHg           mean arterial pressure at the level of the heart or of a cuff there, mmHg.
 * @param tragusAboveZeroCm how far the tragus stands above that level, cm; negative below.
 * @returns                 mmHg, unrounded, never under 0.
 *
 * Errors: none.
 * Not for: taking the place of the measured mean, or a mean that was zeroed at the tragus already.
 * Source: MAP − 0.780 mmHg/cm × height, physics, from memory.
 */
export const mapAtBrainLevelMmHg = (mapMmHg: MmHg, tragusAboveZeroCm: Cm): MmHg =>
  Math.max(0, mapMmHg - hydrostaticMmHg(tragusAboveZeroCm)) as MmHg;
