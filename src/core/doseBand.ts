import type { Kg } from "./quantity.ts";

/**
 * Whether a dose that is ordered for a span of weights is the one for this patient.
 *
 * @param band `fromKg`: counts from this weight on; `belowKg`: counts below this one. Either may be missing.
 * @param kg   the patient's actual weight.
 * @returns    true from `fromKg` on and below `belowKg`; so two bands that share an edge never both count.
 *
 * Source: design choice; the edges are the protocol's.
 */
export const countsAtWeight = (
  band: { readonly fromKg?: number | undefined; readonly belowKg?: number | undefined },
  kg: Kg,
): boolean => kg >= (band.fromKg ?? 0) && kg < (band.belowKg ?? Infinity);
