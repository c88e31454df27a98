import { concentration, type Strength } from "../core/concentration.ts";
import { mixedConcentration } from "../core/dilution.ts";
import { compareStrength, type StrengthComparison } from "../core/dilutionStrength.ts";
import { ml } from "../core/quantities.ts";
import { listedStrengths, type Recipe } from "../protocol/findStrengths.ts";
import type { Protocol } from "../protocol/protocol.ts";

/** Two spellings of one strength differ by no more than doubles lose. */
const SAME_PCT = 1e-6;

/** How one strength stands to another; nothing where they cannot be held against each other. */
function againstStrength(actual: Strength, intended: Strength): StrengthComparison | undefined {
  const [a, b] = [concentration(actual), concentration(intended)];
  if (!a.ok || !b.ok) return undefined;
  const compared = compareStrength(a.value, b.value);
  return compared.ok ? compared.value : undefined;
}

/** The same drug in each millilitre: 4 mg in 250 mL and 16 micrograms in 1 mL. */
export function isSameStrength(actual: Strength, intended: Strength): boolean {
  const compared = againstStrength(actual, intended);
  return compared !== undefined && Math.abs(compared.percentOff) < SAME_PCT;
}

export type StrengthCheck = {
  readonly listed: boolean;
  /** Not listed, and a slip of the decimal point away from one that is. */
  readonly tenFold: StrengthComparison["tenFold"];
};

/** How the concentration that was read off a label stands to those of the protocol. */
export function checkStrength(protocol: Protocol, drugId: string, strength: Strength): StrengthCheck {
  const known = listedStrengths(protocol, drugId);
  if (known.some((one) => isSameStrength(strength, one))) return { listed: true, tenFold: undefined };
  const slips = known.flatMap((one) => againstStrength(strength, one)?.tenFold ?? []);
  return { listed: false, tenFold: slips[0] };
}

export type Made = { readonly strength: Strength; readonly tenFold: StrengthComparison["tenFold"] };

/** What a recipe would make from another stock than its own, and whether that is a slip of the decimal point. */
export function makesFrom(recipe: Recipe, stock: Strength): Made | undefined {
  const [of, takeMl, addMl] = [concentration(stock), ml(recipe.takeMl), ml(recipe.addMl)];
  if (!of.ok || !takeMl.ok || !addMl.ok) return undefined;
  const mixed = mixedConcentration(of.value, takeMl.value, addMl.value);
  if (!mixed.ok) return undefined;
  const { amount, volumeMl } = mixed.value;
  const strength = { amount: amount.value, unit: amount.unit, volumeMl };
  return { strength, tenFold: againstStrength(strength, recipe.makes)?.tenFold };
}
