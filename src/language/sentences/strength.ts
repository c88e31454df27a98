import type { Strength } from "../../core/concentration.ts";
import type { DrawUpPlan } from "../../rules/drawUpPlan.ts";
import type { DrugPlan } from "../../rules/drugPlan.ts";
import type { StrengthCheck } from "../../rules/strengthCheck.ts";
import { sayAmountOnce, sayMl, sayStrength, sayStrengthOnce, spokenAmount } from "./amount.ts";
import { sayNumber } from "./number.ts";
import { sentences } from "./sentence.ts";

export const askStrength = (name: string): string => sentences(`${name}, which concentration?`);

/** "ten times stronger": the slip that is asked about whatever else is wrong. */
export const sayTenFold = ({ is, times }: NonNullable<StrengthCheck["tenFold"]>): string =>
  `${sayNumber(times, 0)} times ${is}`;

/** The concentration read back in two ways, and what the protocol says against it. */
export const askStrengthRight = (name: string, strength: Strength, { listed, tenFold }: StrengthCheck): string =>
  sentences(
    `${name}, ${sayStrength(strength)}?`,
    tenFold !== undefined ? `${sayTenFold(tenFold)} than the protocol's` : listed ? undefined : "Not in the protocol",
  );

/** An amount alone that could be in more than one volume. */
export const askStrengthWhole = (name: string): string =>
  sentences(`${name}, in how many millilitres? Say amount and volume`);

/**
 * The volume of the planned dose, and what it holds where a syringe cannot show the planned one. Only of a strength that
 * was affirmed.
 */
export function sayVolume(drawUp: DrawUpPlan, plan: DrugPlan, strength: Strength): string {
  return sayVolumeAt(drawUp, plan, `At ${sayStrengthOnce(strength)}`);
}

/** The same where the dose itself was not said just now. */
export function sayDoseVolume(drawUp: DrawUpPlan, plan: DrugPlan, strength: Strength): string {
  const dose = sayAmountOnce(spokenAmount(plan.planned.usual));
  return sayVolumeAt(drawUp, plan, `At ${sayStrengthOnce(strength)}, for ${dose}`);
}

function sayVolumeAt(drawUp: DrawUpPlan, { planned }: DrugPlan, at: string): string {
  switch (drawUp.kind) {
    case "drawn":
    case "bag": {
      const volume = spokenAmount({ value: drawUp.volumeMl, unit: "mL" });
      const [holds, wanted] = [spokenAmount(drawUp.dose), spokenAmount(planned.usual)];
      const same = holds.value === wanted.value && holds.unit === wanted.unit;
      return sentences(`${at}, ${sayMl(volume.value)}`, same ? undefined : `It holds ${sayAmountOnce(holds)}`);
    }
    case "dilute-first":
      return sentences(`${at}, too small to draw up: dilute it first`);
    case "impossible":
      return sentences(`${at}, the volume cannot be worked out`);
  }
}
