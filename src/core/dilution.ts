import { concentration, perMl, type Concentration, type ConcentrationError } from "./concentration.ts";
import { isOver, type UnitMismatch } from "./doseAmount.ts";
import { SYRINGES, type Syringe } from "./drawUpSyringe.ts";
import type { Ml, Quantity } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";

export type Dilution = { readonly takeMl: Ml; readonly addMl: Ml };

export type DilutionError =
  | UnitMismatch
  /** Nothing that is added makes it stronger. */
  | { readonly kind: "stronger-than-stock"; readonly times: Quantity<"ratio"> }
  | { readonly kind: "too-small-to-measure"; readonly takeMl: Ml; readonly smallestMl: number };

/**
 * How to make a concentration from a stronger one.
 *
 * @param stock    as the ampoule says it.
 * @param target   wanted.
 * @param finalMl  mL wanted in all.
 * @param syringes to measure with, from small to large.
 * @returns        stock to take, final × target / stock, and fluid to add up to the final volume, mL, unrounded.
 *
 * Errors: `unit-mismatch`; `stronger-than-stock` with how many times; `too-small-to-measure` where the stock to take is
 * less than one line of the finest syringe: dilute in two steps.
 * Not for: whether the two may be mixed.
 * Source: conservation of the amount of drug.
 */
export function dilute(
  stock: Concentration,
  target: Concentration,
  finalMl: Ml,
  syringes: readonly Syringe[] = SYRINGES,
): Result<Dilution, DilutionError> {
  const wanted = perMl(target, stock.amount.unit);
  if (!wanted.ok) return wanted;
  const times = (wanted.value * stock.volumeMl) / stock.amount.value;
  if (isOver(times, 1)) return fail({ kind: "stronger-than-stock", times: times as Quantity<"ratio"> });
  const takeMl = finalMl * Math.min(1, times);
  const smallestMl = 1 / Math.max(...syringes.map(({ divisionsPerMl }) => divisionsPerMl));
  if (isOver(smallestMl, takeMl)) return fail({ kind: "too-small-to-measure", takeMl: takeMl as Ml, smallestMl });
  return ok({ takeMl: takeMl as Ml, addMl: (finalMl - takeMl) as Ml });
}

/**
 * What really results when some of a stock is added to fluid.
 *
 * @param stock  as the ampoule says it.
 * @param takeMl mL of it.
 * @param addMl  mL of fluid that it comes to; the whole bag where nothing was taken out first.
 * @returns      the drug taken in both volumes together.
 *
 * Errors: `out-of-range` where that is no possible amount or volume.
 * Not for: the overfill of a bag, which nobody prints.
 * Source: conservation of the amount of drug.
 */
export const mixedConcentration = (
  stock: Concentration,
  takeMl: Ml,
  addMl: Ml,
): Result<Concentration, ConcentrationError> =>
  concentration({
    amount: (takeMl * stock.amount.value) / stock.volumeMl,
    unit: stock.amount.unit,
    volumeMl: takeMl + addMl,
  });
