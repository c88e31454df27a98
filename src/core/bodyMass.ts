import type { Sex } from "./bodySize.ts";
import type { Cm, Kg, Quantity } from "./quantity.ts";

export type KgPerM2 = Quantity<"kg/m2">;

const LEAN_KG = 9270;
const LEAN_OFFSET = { male: 6680, female: 8780 } as const;
const LEAN_PER_BMI = { male: 216, female: 244 } as const;
/** How much of the weight above the ideal one counts. */
const ADJUSTED_FRACTION = 0.4;

/**
 * Body mass index: weight set against height.
 *
 * @param weightKg actual weight, kg.
 * @param heightCm height, cm.
 * @returns        kg / m², unrounded.
 *
 * Not for: judging children, whose index is read off charts by age.
 * Source: definition.
 */
export const bodyMassIndex = (weightKg: Kg, heightCm: Cm): KgPerM2 => (weightKg / (heightCm / 100) ** 2) as KgPerM2;

/**
 * Lean weight of an adult, for induction drugs in obesity.
 *
 * @param weightKg actual weight, kg.
 * @param heightCm height, cm.
 * @param sex      which equation.
 * @returns        9270 W / (6680 + 216 BMI) for men, 9270 W / (8780 + 244 BMI) for women, kg, unrounded. Over the actual
 *                 weight in a man whose index is under 12: `weightFor` takes the lower.
 *
 * Not for: children.
 * Source: Janmahasatian et al. 2005, from memory.
 */
export const leanWeight = (weightKg: Kg, heightCm: Cm, sex: Sex): Kg =>
  ((LEAN_KG * weightKg) / (LEAN_OFFSET[sex] + LEAN_PER_BMI[sex] * bodyMassIndex(weightKg, heightCm))) as Kg;

/**
 * Adjusted weight: the ideal one and a part of what is above it, for some drugs in obesity.
 *
 * @param actualKg actual weight, kg.
 * @param idealKg  ideal weight, kg, of `idealWeight`.
 * @returns        IBW + 0.4 × (TBW − IBW), kg, unrounded; over the actual weight when that is under the ideal one.
 *
 * Not for: children; patients who are not obese.
 * Source: common practice, no source.
 */
export const adjustedWeight = (actualKg: Kg, idealKg: Kg): Kg =>
  (idealKg + ADJUSTED_FRACTION * (actualKg - idealKg)) as Kg;
