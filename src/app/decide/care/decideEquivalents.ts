import { sayNoDose } from "../../../language/sentences/dose.ts";
import { NO_OSMOTIC, sayEquivalents } from "../../../language/sentences/equivalents.ts";
import type { CaseState } from "../../../log/caseState.ts";
import { findMedicine } from "../../../protocol/findMedicine.ts";
import { planDrug } from "../../../rules/drugPlan.ts";
import { osmoticEquivalents } from "../../../rules/osmoticEquivalents.ts";
import type { AppContext } from "../../context.ts";
import { answered, refused, type Decision } from "../decision.ts";

/** How much of the other osmotic agents has the load of this one's dose. Records nothing, and none of it is a dose. */
export function decideEquivalents({ protocol }: AppContext, log: CaseState, drugId: string, nowMs: number): Decision {
  const medicine = findMedicine(protocol, drugId);
  if (medicine?.drugClass !== "osmotic") return refused(NO_OSMOTIC);
  const plan = planDrug(log, protocol, drugId, nowMs);
  if (!plan.ok) return answered(sayNoDose(plan.error, medicine.spokenName));
  const equal = osmoticEquivalents(protocol, drugId, plan.value.planned.usual);
  return equal === undefined ? refused(NO_OSMOTIC) : answered(sayEquivalents(medicine.spokenName, equal));
}
