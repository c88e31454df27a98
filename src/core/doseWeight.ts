import type { WeightScalar } from "./doseUnits.ts";
import type { Weight } from "./weight.ts";

/** A weight for a dose; what `weightFor` gives is one. */
export type DoseWeight = Weight & {
  /** The one that was asked for … */
  readonly scalar: WeightScalar;
  /** … and, where another stands in for it on purpose, the one that it is. */
  readonly scalarUsed?: WeightScalar | undefined;
};

export type NeedsWeight = { readonly kind: "needs-weight"; readonly scalar: WeightScalar };

/**
 * The weight, if it was found for the scalar that is ordered.
 *
 * @param scalar ordered.
 * @param weight as known.
 * @returns      the weight; none if it is missing or was found for another scalar.
 *
 * Source: design choice. A dose on the wrong weight looks like a right one.
 */
export const orderedWeight = (scalar: WeightScalar, weight: DoseWeight | undefined): DoseWeight | undefined =>
  weight?.scalar === scalar ? weight : undefined;
