import type { CareIntent } from "../../../language/careIntent.ts";
import type { AppContext, AppState } from "../../context.ts";
import { refused, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";

type DrugIntent = Extract<
  CareIntent,
  {
    readonly kind:
      | "given"
      | "infusion"
      | "howMuch"
      | "strength"
      | "amount"
      | "rate"
      | "doseUnit"
      | "make"
      | "total"
      | "fluid"
      | "cylinder";
  }
>;

/** What follows from what was said of drugs, fluids and oxygen. */
export function decideDrugs(
  _context: AppContext,
  _state: AppState,
  intent: DrugIntent,
  _source: Source,
  _nowMs: number,
): Decision {
  return refused(`${intent.kind} is not understood yet.`);
}
