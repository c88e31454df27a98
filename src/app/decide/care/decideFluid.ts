import { amount } from "../../../core/doseAmount.ts";
import type { CareIntent } from "../../../language/careIntent.ts";
import { askFluid } from "../../../language/sentences/fluid.ts";
import type { CaseState } from "../../../log/caseState.ts";
import { findFluid, overFluidRange } from "../../../rules/fluidTotal.ts";
import type { AppContext } from "../../context.ts";
import { refused, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";
import { askToRecord } from "./askCare.ts";

/** "Saline two fifty given": read back, held against the protocol, and recorded once it is affirmed. */
export function decideFluid(
  { protocol }: AppContext,
  log: CaseState,
  { fluidId, volumeMl: { value: volumeMl } }: Pick<Extract<CareIntent, { kind: "fluid" }>, "fluidId" | "volumeMl">,
  source: Source,
  nowMs: number,
): Decision {
  const fluid = findFluid(protocol, fluidId);
  if (fluid === undefined) return refused("That fluid is not in this protocol.");
  if (!amount(volumeMl, "mL").ok) return refused("Say the volume again.");
  const prompt = askFluid(fluid, volumeMl, overFluidRange(log, protocol, fluid, volumeMl));
  return askToRecord(log, [{ type: "fluid.given", fluidId, volumeMl, ...source }], { prompt, source, nowMs });
}
