import type { WeightScalar } from "../../core/doseUnits.ts";
import { VITALS } from "../../core/vitals.ts";
import type { DrugPlan, DrugPlanError } from "../../rules/drugPlan.ts";
import { sayAmount, spokenAmount } from "./amount.ts";
import { sayDoseUnit } from "./doseUnit.ts";
import { sayNumber, sayTwoWays } from "./number.ts";
import { saySafely } from "./safeNumber.ts";
import { sentences } from "./sentence.ts";
import { sayOld } from "./status.ts";

const SCALARS: Readonly<Record<WeightScalar, string>> = {
  actual: "actual weight",
  ideal: "ideal weight",
  lean: "lean weight",
  adjusted: "adjusted weight",
};

function sayPerKg({ planned, weight }: DrugPlan): string | undefined {
  if (planned.perKg === undefined || weight === undefined) return undefined;
  const name = `${SCALARS[weight.scalarUsed]} ${saySafely("weight", weight.kg, "kg", 1)}`;
  const guessed = weight.kind === "estimated" ? ", estimated" : "";
  return `${sayNumber(planned.perKg, 2)} per kilo, ${name}${guessed}`;
}

/** What shock did to the usual amount; that it is not known where it would have mattered. */
function sayShock({ dose, planned, shock }: DrugPlan): string | undefined {
  if (dose.shock === undefined && !dose.omitInShock) return undefined;
  if (shock === undefined) return "Shock index not known";
  const usual = planned.shocked ? dose.shock?.usual : undefined;
  if (usual === undefined || usual === dose.usual) return undefined;
  return `${planned.reduced ? "Reduced" : "Raised"} for shock index ${sayNumber(shock.index, 2)}`;
}

const sayLimits = ({ dose, planned }: DrugPlan): string | undefined =>
  planned.capped ? "At the cap" : planned.raised && dose.minimum !== undefined ? "At the minimum" : undefined;

/**
 * The protocol's dose for this patient: mass first, two ways; then what it was worked out from. Never a volume: that needs
 * a concentration that was read back.
 */
export const sayDose = (plan: DrugPlan): string =>
  sentences(
    // The purpose always: ten micrograms of adrenaline are right for a falling pressure and wrong for an arrest.
    `${plan.medicine.spokenName}, ${plan.dose.purpose}`,
    sayAmount(spokenAmount(plan.planned.usual)),
    sayPerKg(plan),
    sayShock(plan),
    sayLimits(plan),
    plan.others === 0
      ? undefined
      : `${sayNumber(plan.others, 0)} other ${plan.others === 1 ? "dose" : "doses"} in the protocol`,
    plan.medicine.beforeHospital ? undefined : "The protocol does not give it before hospital",
  );

const list = (words: readonly string[]): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1) ?? ""}`;

/**
 * Why there is no dose, and what to do about it.
 *
 * @param name what was heard, as it is said: an answer that does not name the drug could be one about another.
 */
export function sayNoDose(error: DrugPlanError, name: string): string {
  switch (error.kind) {
    case "no-medicine":
      return sentences(`${name} is not in this protocol`);
    case "not-in-region":
      return `${sentences(error.medicine.spokenName + " is not sold in this region")}`;
    case "omitted-in-shock":
      return sentences(
        `No ${error.medicine.spokenName}: shock index ${sayNumber(error.shock.index, 2)}, left out in shock`,
      );
    case "pressure-too-low": {
      const { sbpMmHg, ageMs, targetMmHg } = error;
      const systolic = [`systolic ${sayNumber(sbpMmHg, 0)}`, sayOld(ageMs), `under ${sayNumber(targetMmHg, 0)}`];
      return sentences(`No ${error.medicine.spokenName}: ${systolic.filter((part) => part !== undefined).join(", ")}`);
    }
    case "infusion-only": {
      const { low, start, high, unit } = error.infusion;
      const span = `start ${sayTwoWays(start)}, from ${sayNumber(low, 2)} to ${sayNumber(high, 2)}`;
      return sentences(`${error.medicine.spokenName}, infusion`, `${span} ${sayDoseUnit(unit)}`);
    }
    case "no-dose":
      return sentences(`No ${error.population} dose of ${error.medicine.spokenName} in this protocol`);
    case "in-question":
      return sentences(
        `No dose of ${name} while the ${VITALS[error.code].spokenName} is in question`,
        "Answer it first",
      );
    case "missing":
      return sentences(`${error.medicine.spokenName} needs ${list(error.missing)}`, "Say it first");
    case "too-short":
      return sentences(
        `No ideal weight under ${sayNumber(error.fromCm, 1)} centimetres`,
        `Work out ${error.medicine.spokenName} by hand`,
      );
    case "impossible":
      return sentences(`${error.medicine.spokenName} comes out at no possible dose`, "Check the weight");
  }
}
