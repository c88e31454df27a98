import { concentration, type Strength } from "../core/concentration.ts";
import { amount, type Amount } from "../core/doseAmount.ts";
import { drawUp } from "../core/drawUpSyringe.ts";
import { volumeFor } from "../core/drawUp.ts";
import type { DrugPlan } from "./drugPlan.ts";

/** A planned dose as a volume of what is in the hand. */
export type DrawUpPlan =
  /** In a syringe, on one of its lines; `dose` is what that volume holds. */
  | { readonly kind: "drawn"; readonly volumeMl: number; readonly dose: Amount }
  /** More than a syringe holds, or a bag: not rounded to any line. */
  | { readonly kind: "bag"; readonly volumeMl: number; readonly dose: Amount }
  /** Under the first line of the finest syringe. */
  | { readonly kind: "dilute-first" }
  /** The strength is of another kind of unit than the dose, or comes to no possible volume. */
  | { readonly kind: "impossible" };

const IMPOSSIBLE: DrawUpPlan = { kind: "impossible" };

/**
 * The volume of a planned dose.
 *
 * @param plan     the dose for this patient; its cap also bounds the rounding.
 * @param strength as affirmed: nothing else may be handed in.
 * @returns        the volume, mL, and the dose it holds in the unit of the plan.
 */
export function planDrawUp({ dose, planned, medicine }: DrugPlan, strength: Strength): DrawUpPlan {
  const of = concentration(strength);
  if (!of.ok) return IMPOSSIBLE;
  const { usual } = planned;
  const whole = volumeFor(usual, of.value);
  if (!whole.ok) return IMPOSSIBLE;
  const bag: DrawUpPlan = { kind: "bag", volumeMl: whole.value, dose: usual };
  if (medicine.drugClass === "osmotic") return bag;
  const cap = dose.cap === undefined ? undefined : amount(dose.cap, dose.unit);
  const drawn = drawUp(usual, of.value, { cap: cap?.ok ? cap.value : undefined });
  if (drawn.ok) return { kind: "drawn", volumeMl: drawn.value.drawMl, dose: drawn.value.dose };
  if (drawn.error.kind === "too-large-to-draw") return bag;
  return drawn.error.kind === "too-small-to-draw" ? { kind: "dilute-first" } : IMPOSSIBLE;
}
