import type { Strength } from "../core/concentration.ts";
import type { Drug, Protocol } from "./protocol.ts";

export type Recipe = Drug["recipes"][number];

/** A percentage is grams in this much. */
const ML_OF_A_PERCENTAGE = 100;

const plain = ({ amount, unit, volumeMl }: Strength): Strength => ({ amount, unit, volumeMl });

/** The strength that the label of an osmotic agent names with its percentage; none for a drug. */
export function labelledPercentage(protocol: Protocol, id: string): Strength | undefined {
  const osmotic = protocol.osmotics.find((o) => o.id === id);
  return osmotic && { amount: osmotic.percent, unit: "g", volumeMl: ML_OF_A_PERCENTAGE };
}

/** Every strength the protocol knows of a drug or an osmotic agent, as its label or its syringe says it. */
export function listedStrengths(protocol: Protocol, id: string): readonly Strength[] {
  const drug = protocol.drugs.find((d) => d.id === id);
  const percentage = labelledPercentage(protocol, id);
  const listed = [...(drug?.concentrations ?? []), ...(drug?.recipes ?? []).map(({ makes }) => makes)].map(plain);
  return percentage === undefined ? listed : [percentage, ...listed];
}

const MADE_FOR = {
  pushDose: ["syringe"],
  infusion: ["infusion"],
  any: ["syringe", "infusion"],
} as const satisfies Record<string, readonly Recipe["for"][]>;

/** The dilutions of a drug that are for this. */
export function recipesFor(protocol: Protocol, id: string, purpose: keyof typeof MADE_FOR): readonly Recipe[] {
  const recipes = protocol.drugs.find((d) => d.id === id)?.recipes ?? [];
  const kinds: readonly Recipe["for"][] = MADE_FOR[purpose];
  return recipes.filter((recipe) => kinds.includes(recipe.for));
}

export const findRecipe = (protocol: Protocol, drugId: string, recipeId: string): Recipe | undefined =>
  protocol.drugs.find((d) => d.id === drugId)?.recipes.find((r) => r.id === recipeId);
