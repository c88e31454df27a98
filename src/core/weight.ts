import type { Kg } from "./quantity.ts";

/** `computed`: worked out from measured values. `estimated`: guessed, reported, or worked out from a guess. */
export type WeightKind = "measured" | "computed" | "estimated";

/** A body weight and how it came about; whatever is worked out from an estimate is an estimate too. */
export type Weight = { readonly kg: Kg; readonly kind: WeightKind };
