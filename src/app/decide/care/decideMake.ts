import type { Strength } from "../../../core/concentration.ts";
import type { SpokenAmount, SpokenStrength } from "../../../language/careIntent.ts";
import { sayNoDose } from "../../../language/sentences/dose.ts";
import { askAmountUnit } from "../../../language/sentences/given.ts";
import { askStock, askStockRight, refuseStock, sayNoRecipe } from "../../../language/sentences/recipe.ts";
import { askStrengthWhole } from "../../../language/sentences/strength.ts";
import type { CaseState } from "../../../log/caseState.ts";
import type { RecipePurpose } from "../../../log/facts.ts";
import { findMedicine } from "../../../protocol/findMedicine.ts";
import { recipesFor, type Recipe } from "../../../protocol/findStrengths.ts";
import { isSameStrength, makesFrom } from "../../../rules/strengthCheck.ts";
import type { AppContext } from "../../context.ts";
import { refused, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";
import { askFor, askToRecord } from "./askCare.ts";
import { isWhole, strengthWithAmount, wholeStrength } from "./decideStrength.ts";

export type StockAsked = { readonly drugId: string; readonly purpose: RecipePurpose };

/** Another recipe for the same thing whose volumes, with this stock, would be a slip of the decimal point. */
function wrongWay(recipes: readonly Recipe[], chosen: Recipe) {
  for (const recipe of recipes) {
    const made = recipe === chosen ? undefined : makesFrom(recipe, chosen.stock);
    if (made?.tenFold !== undefined) return { recipe, made };
  }
  return undefined;
}

/** The stock is read back as it was said; the recipe starts when it is affirmed. */
function askChosen(
  log: CaseState,
  name: string,
  drugId: string,
  recipes: readonly Recipe[],
  recipe: Recipe,
  stock: Strength,
  source: Source,
  nowMs: number,
): Decision {
  const prompt = askStockRight(name, stock, wrongWay(recipes, recipe));
  const fact = { type: "recipe.started", drugId, recipeId: recipe.id, ...source } as const;
  return askToRecord(log, [fact], { prompt, source, nowMs });
}

const stocksOf = (recipes: readonly Recipe[]): readonly Strength[] =>
  recipes.map(({ stock }) => stock).filter((one, i, all) => all.findIndex((o) => isSameStrength(o, one)) === i);

/** "Make push dose phenylephrine": the stock in the hand comes first. */
export function decideMake(
  { protocol }: AppContext,
  log: CaseState,
  { drugId, purpose }: StockAsked,
  source: Source,
  nowMs: number,
): Decision {
  const name = findMedicine(protocol, drugId)?.spokenName;
  if (name === undefined) return refused(sayNoDose({ kind: "no-medicine" }, drugId));
  const recipes = recipesFor(protocol, drugId, purpose);
  const [only, ...others] = recipes;
  if (only === undefined) return refused(sayNoRecipe(name, purpose));
  if (others.length === 0) return askChosen(log, name, drugId, recipes, only, only.stock, source, nowMs);
  const prompt = askStock(name, stocksOf(recipes));
  return askFor(log, { kind: "stock", drugId, purpose }, { prompt, source, nowMs });
}

/**
 * The stock in the hand. It chooses the recipe; a stock that no recipe starts from is refused, with what the first recipe
 * would have made of it.
 */
function chooseByStock(
  { protocol }: AppContext,
  log: CaseState,
  { drugId, purpose }: StockAsked,
  stock: Strength,
  source: Source,
  nowMs: number,
): Decision {
  const name = findMedicine(protocol, drugId)?.spokenName ?? drugId;
  const recipes = recipesFor(protocol, drugId, purpose);
  const [first] = recipes;
  if (first === undefined) return refused(sayNoRecipe(name, purpose));
  const chosen = recipes.find((recipe) => isSameStrength(stock, recipe.stock));
  return chosen === undefined
    ? refused(refuseStock(name, first, stock, makesFrom(first, stock)))
    : askChosen(log, name, drugId, recipes, chosen, stock, source, nowMs);
}

const stocks = ({ protocol }: AppContext, { drugId, purpose }: StockAsked): readonly Strength[] =>
  stocksOf(recipesFor(protocol, drugId, purpose));

/** "Ten milligrams per mil" to the question for the stock. */
export function answerStock(
  context: AppContext,
  log: CaseState,
  asked: StockAsked,
  spoken: SpokenStrength,
  source: Source,
  nowMs: number,
): Decision {
  const found = wholeStrength(spoken, stocks(context, asked));
  if (isWhole(found)) return chooseByStock(context, log, asked, found, source, nowMs);
  const name = findMedicine(context.protocol, asked.drugId)?.spokenName ?? asked.drugId;
  return refused(askAmountUnit(name, spoken.amount.value, found.length === 0 ? ["mcg", "mg"] : found));
}

/** An amount alone: only a stock of a recipe can complete it. */
export function answerStockByAmount(
  context: AppContext,
  log: CaseState,
  asked: StockAsked,
  amount: SpokenAmount,
  source: Source,
  nowMs: number,
): Decision {
  const stock = strengthWithAmount(amount, stocks(context, asked));
  if (stock !== undefined) return chooseByStock(context, log, asked, stock, source, nowMs);
  return refused(askStrengthWhole(findMedicine(context.protocol, asked.drugId)?.spokenName ?? asked.drugId));
}
