import { sayNoDose } from "../../../language/sentences/dose.ts";
import { sayFluidTotal } from "../../../language/sentences/fluid.ts";
import { sayDrugTotal } from "../../../language/sentences/given.ts";
import { sentences } from "../../../language/sentences/sentence.ts";
import type { CaseState } from "../../../log/caseState.ts";
import { selectFluidTotals, selectTotal, selectTotals } from "../../../log/totals.ts";
import { findMedicine } from "../../../protocol/findMedicine.ts";
import { findFluid, fluidInAll } from "../../../rules/fluidTotal.ts";
import type { AppContext } from "../../context.ts";
import { answered, refused, type Decision } from "../decision.ts";

/** What was given since the case began: of one drug, or of every drug and fluid. Only what was affirmed. */
export function decideTotal({ protocol }: AppContext, log: CaseState, drugId: string | undefined): Decision {
  const nameOf = (id: string): string => findMedicine(protocol, id)?.spokenName ?? id;
  if (drugId !== undefined) {
    if (findMedicine(protocol, drugId) === undefined) return refused(sayNoDose({ kind: "no-medicine" }, drugId));
    return answered(sayDrugTotal(nameOf(drugId), selectTotal(log, drugId)));
  }
  const drugs = selectTotals(log).map(({ drugId: id, total }) => sayDrugTotal(nameOf(id), total));
  const fluids = selectFluidTotals(log).map(({ fluidId }) => {
    const { volumeMl, perKilo } = fluidInAll(log, protocol, fluidId);
    return sayFluidTotal(findFluid(protocol, fluidId) ?? { label: fluidId }, volumeMl, perKilo);
  });
  return answered(drugs.length + fluids.length === 0 ? "Nothing given." : sentences(...drugs, ...fluids));
}
