import type { Medication } from "@medplum/fhirtypes";
import { concentration, perMl } from "../../core/concentration.ts";
import { amount } from "../../core/doseAmount.ts";
import type { Fact } from "../../log/facts.ts";
import { findMedicine } from "../../protocol/findMedicine.ts";
import { ucumOf } from "../ucum.ts";
import { concept, quantity, type Context, type Exported } from "./elements.ts";
import { resourceId } from "./resourceId.ts";

type Of<T extends Fact["type"]> = Extract<Fact, { readonly type: T }>;
type Affirmed = Of<"strength.affirmed">;

/** A volume that was worked out from a strength was rounded for a syringe, by no more than this part of it. */
const MOST_ROUNDED = 0.05;

/** Every concentration that was read back and affirmed, bought or made up, as a `Medication` with its one ingredient. */
export function strengths(context: Context): readonly Exported<Medication>[] {
  const { facts, struckIds, protocol } = context.recorded;
  return facts.flatMap((fact): readonly Exported<Medication>[] => {
    if (fact.type !== "strength.affirmed") return [];
    const name = concept(findMedicine(protocol, fact.drugId)?.name ?? fact.drugId);
    const { amount: value, unit, volumeMl } = fact.strength;
    const strength = { numerator: quantity(value, ucumOf(unit)), denominator: quantity(volumeMl, "mL") };
    const resource: Medication = {
      resourceType: "Medication",
      id: resourceId(fact.id),
      ...context.meta,
      status: struckIds.has(fact.id) ? "entered-in-error" : "active",
      code: name,
      ingredient: [{ itemCodeableConcept: name, isActive: true, strength }],
    };
    return [{ resource, origins: ["spoken"], saidMs: fact.atMs }];
  });
}

const isSame = (a: Affirmed["strength"], b: Affirmed["strength"]): boolean =>
  a.amount === b.amount && a.unit === b.unit && a.volumeMl === b.volumeMl;

/** Whether this volume is this dose at this strength, up to the rounding of a drawn-up volume. */
function fits({ amount: dose, volumeMl }: Of<"drug.given">, strength: Affirmed["strength"]): boolean {
  const checked = concentration(strength);
  const drug = amount(dose.value, dose.unit);
  if (volumeMl === undefined || !checked.ok || !drug.ok) return false;
  const each = perMl(checked.value, dose.unit);
  return each.ok && Math.abs(volumeMl * each.value - dose.value) <= MOST_ROUNDED * dose.value;
}

/**
 * The concentration that this was given from: the one of its drug that was affirmed last before it. None where nobody
 * affirmed one, where it was struck out since, or where the dose and its volume are not of it.
 */
export function strengthOf({ recorded }: Context, given: Of<"drug.given"> | Of<"infusion.set">): Affirmed | undefined {
  const before = recorded.facts.slice(0, recorded.facts.indexOf(given));
  const struckBefore = new Set(before.flatMap((fact) => (fact.type === "entry.struck" ? fact.targetIds : [])));
  const affirmed = before.findLast(
    (fact): fact is Affirmed =>
      fact.type === "strength.affirmed" && fact.drugId === given.drugId && !struckBefore.has(fact.id),
  );
  if (affirmed === undefined || recorded.struckIds.has(affirmed.id)) return undefined;
  const { strength } = affirmed;
  const isOfIt =
    given.type === "drug.given"
      ? fits(given, strength)
      : given.strength !== undefined && isSame(given.strength, strength);
  return isOfIt ? affirmed : undefined;
}
