import { quantityOf, type Ml, type Quantity, type QuantityError } from "./quantity.ts";
import { ok, type Result } from "./result.ts";

export type Solute = "sodiumChloride" | "mannitol" | "sodiumBicarbonate";
export type MosmPerL = Quantity<"mOsm/L">;
export type Mosm = Quantity<"mOsm">;

/** Grams in 100 mL. Anything a bottle can say; this project's check against slips. */
const gPer100Ml = quantityOf<"g/100 mL">({ min: 0.01, max: 100 });

/** Molar masses, g/mol, and the particles of one formula unit when all of it dissociates. Source: from memory. */
const SOLUTES: Readonly<Record<Solute, { readonly gPerMol: number; readonly particles: number }>> = {
  sodiumChloride: { gPerMol: 58.44, particles: 2 },
  mannitol: { gPerMol: 182.17, particles: 1 },
  sodiumBicarbonate: { gPerMol: 84.007, particles: 2 },
};

const ML_PER_L = 1000;
/** 1 g in 100 mL is 10 g in a litre; a mol is 1000 mmol. */
const MILLI_PER_L_OF_PERCENT = 10 * 1000;

/**
 * Osmolarity of an osmotic agent.
 *
 * @param agent what is dissolved, and how much, grams in 100 mL.
 * @returns     percent × 10 / molar mass × particles × 1000, mOsm/L, unrounded.
 *
 * Errors: `not-a-number`, `out-of-range` for a percentage that no bottle says.
 * Not for: osmolality of plasma. Real solutions dissociate less than fully; labels may print a little less.
 * Source: definition, with full dissociation; molar masses from memory.
 */
export function osmolarity(agent: {
  readonly solute: Solute;
  readonly percent: number;
}): Result<MosmPerL, QuantityError> {
  const percent = gPer100Ml(agent.percent);
  if (!percent.ok) return percent;
  const { gPerMol, particles } = SOLUTES[agent.solute];
  return ok(((percent.value * MILLI_PER_L_OF_PERCENT * particles) / gPerMol) as MosmPerL);
}

/**
 * Osmotic load of a volume.
 *
 * @param volumeMl mL given.
 * @param of       its osmolarity, mOsm/L.
 * @returns        mL / 1000 × mOsm/L, mOsm, unrounded.
 *
 * Source: definition.
 */
export const osmolarLoad = (volumeMl: Ml, of: MosmPerL): Mosm => ((volumeMl * of) / ML_PER_L) as Mosm;

/**
 * The volume of another agent with the same osmotic load.
 *
 * @param volumeMl mL of the one.
 * @param of       its osmolarity, mOsm/L.
 * @param other    osmolarity of the other, mOsm/L; never 0.
 * @returns        mL × of / other, mL, unrounded.
 *
 * Not for: saying that the two act alike. Sodium stays, mannitol goes with water; pH and sodium change differently.
 * Source: equal loads.
 */
export const equiosmolarVolume = (volumeMl: Ml, of: MosmPerL, other: MosmPerL): Ml => ((volumeMl * of) / other) as Ml;
