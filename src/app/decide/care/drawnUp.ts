import type { Strength } from "../../../core/concentration.ts";
import { spokenAmount } from "../../../language/sentences/amount.ts";
import { roundedDose } from "../../../language/sentences/number.ts";
import type { SaidAmount } from "../../../log/careFacts.ts";
import { planDrawUp } from "../../../rules/drawUpPlan.ts";
import type { DrugPlan } from "../../../rules/drugPlan.ts";

/** What is drawn up, and its volume where the concentration is known. */
export type DrawnUp = { readonly amount: SaidAmount; readonly volumeMl?: number };

/** The planned dose as it is spoken: what the syringe holds, where the concentration in the hand was affirmed. */
export function drawnUp(plan: DrugPlan, strength: Strength | undefined): DrawnUp {
  const drawUp = strength && planDrawUp(plan, strength);
  if (drawUp === undefined || !("volumeMl" in drawUp)) return { amount: spokenAmount(plan.planned.usual) };
  return { amount: spokenAmount(drawUp.dose), volumeMl: roundedDose(drawUp.volumeMl) };
}
