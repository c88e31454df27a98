import { roundedRate } from "../../../language/sentences/number.ts";
import type { CareFact, SaidRate } from "../../../log/careFacts.ts";
import type { CaseState } from "../../../log/caseState.ts";
import type { Medicine } from "../../../protocol/findMedicine.ts";
import type { InfusionSetting } from "../../../rules/infusionSetting.ts";
import type { Source } from "../recordStatement.ts";

export type InfusionFact = Extract<CareFact, { readonly type: "infusion.set" }>;

/** What was worked out is recorded as it is said; what was said stays as it is. */
const asSaid = (given: number, said: boolean): number => (said ? given : roundedRate(given));

/** A rate that runs from now on, as it will stand in the record. */
export function infusionFact(
  log: CaseState,
  { id: drugId, drugClass }: Medicine,
  setting: InfusionSetting,
  saidUnit: SaidRate["unit"],
  source: Source,
): InfusionFact {
  const { rate, infusion, weight, mlPerH } = setting;
  const strength = log.care.strengths[drugId]?.strength;
  return {
    type: "infusion.set",
    drugId,
    drugClass,
    ...(infusion && { infusionId: infusion.id }),
    rate: { value: asSaid(rate.value, rate.unit === saidUnit), unit: rate.unit },
    ...(weight && { weightKg: weight.kg }),
    ...(mlPerH !== undefined && { mlPerH: asSaid(mlPerH, saidUnit === "mL/h") }),
    ...(strength && { strength }),
    ...source,
  };
}

/** Stopped: the rate is 0 in the unit it ran in. */
export const stopFact = (
  { id: drugId, drugClass }: Medicine,
  unit: SaidRate["unit"],
  source: Source,
): InfusionFact => ({
  type: "infusion.set",
  drugId,
  drugClass,
  rate: { value: 0, unit },
  mlPerH: 0,
  ...source,
});
