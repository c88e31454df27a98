import { askLabel, recipeSteps } from "../../../language/sentences/recipe.ts";
import type { CaseState } from "../../../log/caseState.ts";
import { findMedicine } from "../../../protocol/findMedicine.ts";
import { findRecipe } from "../../../protocol/findStrengths.ts";
import type { AppContext } from "../../context.ts";
import { recorded, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";
import { askToRecord } from "./askCare.ts";

/**
 * "Done" or "next" while a dilution is being made: its next step, or, after the last, what it makes, read back to be
 * affirmed as the concentration in the hand.
 *
 * @returns nothing where no recipe is under way: then the words are meant for the list of steps.
 */
export function moveRecipe(
  { protocol }: AppContext,
  log: CaseState,
  source: Source,
  nowMs: number,
): Decision | undefined {
  const { recipe: entry } = log.care;
  if (entry === undefined || entry.ended) return undefined;
  const { drugId, recipeId, at } = entry;
  const [recipe, medicine] = [findRecipe(protocol, drugId, recipeId), findMedicine(protocol, drugId)];
  // Another protocol came in the middle: nobody knows what was poured into what.
  if (recipe === undefined || medicine === undefined)
    return recorded("That recipe is not in this protocol. Throw it away and start again.", [
      { type: "recipe.ended", ...source },
    ]);
  const step = recipeSteps(recipe)[at + 1];
  if (step !== undefined) return recorded(step, [{ type: "recipe.moved", at: at + 1, ...source }]);
  const { amount, unit, volumeMl } = recipe.makes;
  const strength = { amount, unit, volumeMl };
  const fact = {
    type: "strength.affirmed",
    drugId,
    drugClass: medicine.drugClass,
    strength,
    ...source,
  } as const;
  const prompt = askLabel(medicine.spokenName, strength);
  return askToRecord(log, [fact], { prompt, source, nowMs }, [{ type: "recipe.ended", ...source }]);
}
