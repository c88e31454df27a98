import { concentration, perMl, type Concentration, type ConcentrationError, type Strength } from "./concentration.ts";
import { isOver, type UnitMismatch } from "./doseAmount.ts";
import { mixedConcentration } from "./dilution.ts";
import { ml } from "./quantities.ts";
import type { Quantity } from "./quantity.ts";
import { ok, type Result } from "./result.ts";

export type StrengthComparison = {
  /** Actual / intended. */
  readonly ratio: Quantity<"ratio">;
  readonly percentOff: Quantity<"% off">;
  /** A slip of the decimal point: the actual one is that many `times` stronger or weaker, 10, 100, 1000 … */
  readonly tenFold: { readonly is: "stronger" | "weaker"; readonly times: number } | undefined;
};

/** One part into an unopened volume of ten makes a ten-fold slip come out 9 % off; it is one still. */
const NEAR_ENOUGH = 0.1;

function slipOf(ratio: number): StrengthComparison["tenFold"] {
  const power = Math.round(Math.log10(ratio));
  if (power === 0 || isOver(Math.abs(ratio / 10 ** power - 1), NEAR_ENOUGH)) return undefined;
  return { is: power > 0 ? "stronger" : "weaker", times: 10 ** Math.abs(power) };
}

/**
 * How a concentration that was made, or read off a label, stands to the one intended.
 *
 * @param actual   in the hand.
 * @param intended as planned.
 * @returns        ratio, difference in %, both unrounded, and whether it looks like a slip of the decimal point: within a
 *                 tenth of a power of ten that is not 1.
 *
 * Errors: `unit-mismatch`.
 * Not for: how much difference matters; 1 mL added to a full bag of 100 mL is 1 % weak and no harm.
 * Source: arithmetic.
 */
export function compareStrength(
  actual: Concentration,
  intended: Concentration,
): Result<StrengthComparison, UnitMismatch> {
  const unit = intended.amount.unit;
  const made = perMl(actual, unit);
  if (!made.ok) return made;
  const ratio = (made.value * intended.volumeMl) / intended.amount.value;
  return ok({
    ratio: ratio as Quantity<"ratio">,
    percentOff: ((ratio - 1) * 100) as Quantity<"% off">,
    tenFold: slipOf(ratio),
  });
}

/** A dilution as the protocol writes it. */
export type Recipe = {
  readonly stock: Strength;
  readonly takeMl: number;
  readonly addMl: number;
  readonly makes: Strength;
};

/**
 * Whether a recipe makes what it says.
 *
 * @param recipe stock, mL to take, mL to add, and the strength it claims to make.
 * @returns      what really results against what is claimed.
 *
 * Errors: those of `concentration`; `unit-mismatch`.
 * Source: conservation of the amount of drug.
 */
export function checkRecipe(recipe: Recipe): Result<StrengthComparison, ConcentrationError | UnitMismatch> {
  const stock = concentration(recipe.stock);
  if (!stock.ok) return stock;
  const makes = concentration(recipe.makes);
  if (!makes.ok) return makes;
  const takeMl = ml(recipe.takeMl);
  if (!takeMl.ok) return takeMl;
  const addMl = ml(recipe.addMl);
  if (!addMl.ok) return addMl;
  const mixed = mixedConcentration(stock.value, takeMl.value, addMl.value);
  return mixed.ok ? compareStrength(mixed.value, makes.value) : mixed;
}
