import type { Strength } from "../../core/concentration.ts";
import type { Recipe as Volumes } from "../../core/dilutionStrength.ts";
import type { RecipePurpose } from "../../log/facts.ts";
import type { Made } from "../../rules/strengthCheck.ts";
import { sayAmount, sayMl, sayMlOnce, sayStrength, sayStrengthOnce, spokenAmount, wholeAmount } from "./amount.ts";
import { sayExactly } from "./number.ts";
import { sentences } from "./sentence.ts";
import { sayTenFold } from "./strength.ts";

/** As the protocol writes it. */
type Recipe = Volumes & { readonly diluent: string };

/** "sodium chloride 0.9 %" aloud. */
const sayDiluent = (diluent: string): string =>
  diluent.replaceAll(/\d+(?:\.\d+)?/gu, (digits) => sayExactly(Number(digits))).replaceAll(" %", " percent");

const NO_RECIPE: Readonly<Record<RecipePurpose, string>> = {
  pushDose: "No push dose recipe",
  infusion: "No infusion recipe",
  any: "No recipe",
};

export const sayNoRecipe = (name: string, purpose: RecipePurpose): string =>
  sentences(`${NO_RECIPE[purpose]} for ${name} in this protocol`);

/** Several stocks are possible: which is in the hand? */
export const askStock = (name: string, stocks: readonly Strength[]): string =>
  sentences(`${name}, which stock?`, stocks.map(sayStrengthOnce).join(", or "));

/** How the slip would come about: "One millilitre and nine would be ten times stronger". */
const sayWrongWay = ({ takeMl, addMl }: Recipe, { tenFold }: Made): string | undefined =>
  tenFold && `${sayMlOnce(takeMl)} and ${sayExactly(addMl)} would be ${sayTenFold(tenFold)}`;

/**
 * The stock read back in two ways.
 *
 * @param wrong another recipe for the same thing, which from this stock would be a slip of the decimal point.
 */
export const askStockRight = (
  name: string,
  stock: Strength,
  wrong: { readonly recipe: Recipe; readonly made: Made } | undefined,
): string => sentences(`${name}, stock ${sayStrength(stock)}?`, wrong && sayWrongWay(wrong.recipe, wrong.made));

/** No recipe starts from this stock: what the protocol's would make of it, so that nobody goes on with it. */
export function refuseStock(name: string, recipe: Recipe, stock: Strength, made: Made | undefined): string {
  const makes = made && {
    ...spokenAmount({ value: made.strength.amount, unit: made.strength.unit }),
    volumeMl: made.strength.volumeMl,
  };
  const slip = made?.tenFold && `, ${sayTenFold(made.tenFold)}`;
  return sentences(
    `Not from ${sayStrengthOnce(stock)}`,
    makes &&
      `The recipe would make ${sayStrengthOnce({ amount: makes.value, unit: makes.unit, volumeMl: makes.volumeMl })}${slip ?? ""}`,
    `${name} needs stock ${sayStrengthOnce(recipe.stock)}`,
  );
}

/** The steps of a recipe, spoken one at a time; what it makes is read back after them. */
export const recipeSteps = ({ takeMl, addMl, diluent }: Recipe): readonly string[] => [
  sentences(`Take ${sayMl(takeMl)} of stock`),
  sentences(`Add ${sayMl(addMl)} of ${sayDiluent(diluent)}`),
];

/** What the label has to say: all of it, and how much each millilitre holds. */
export function askLabel(name: string, makes: Strength): string {
  const each = wholeAmount({ value: makes.amount / makes.volumeMl, unit: makes.unit });
  return sentences(
    `Label: ${name}, ${sayStrength(makes)}?`,
    makes.volumeMl === 1 ? undefined : `${sayAmount(each)} in each millilitre`,
  );
}
