import type { Dose, Drug, Protocol } from "../protocol.ts";
import type { FileTwo } from "./schemaTwo.ts";

type DrugTwo = FileTwo["drugs"][number];
type DoseTwo = DrugTwo["doses"][number];
type RecipeTwo = DrugTwo["recipes"][number];

/** What is made up in more than this is taken for a bag. */
const SYRINGE_UP_TO_ML = 100;
/** In what words schema 2 said when a dose was for. */
const AFTER_TUBE = "after intubation";

const doseThree = (dose: DoseTwo): Dose => (dose.purpose.includes(AFTER_TUBE) ? { ...dose, afterTube: true } : dose);

const recipeThree = (recipe: RecipeTwo, { doses }: DrugTwo): Drug["recipes"][number] => ({
  ...recipe,
  for: doses.length > 0 && recipe.makes.volumeMl <= SYRINGE_UP_TO_ML ? "syringe" : "infusion",
});

/**
 * The drugs and osmotic agents of schema 2 with what it did not say guessed: what a dilution is for, by its volume and by
 * whether the drug has a dose to give at once; which doses are for after the tube, by their wording. Only guesses: a pump's
 * syringe of such a drug is taken for one to give from.
 */
export const medicinesThree = ({ drugs, osmotics }: FileTwo): Pick<Protocol, "drugs" | "osmotics"> => ({
  drugs: drugs.map((drug) => ({
    ...drug,
    doses: drug.doses.map(doseThree),
    recipes: drug.recipes.map((recipe) => recipeThree(recipe, drug)),
  })),
  osmotics: osmotics.map((osmotic) => ({ ...osmotic, doses: osmotic.doses.map(doseThree) })),
});
