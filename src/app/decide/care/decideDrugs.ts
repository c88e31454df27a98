import type { CareIntent } from "../../../language/careIntent.ts";
import type { AppContext, AppState } from "../../context.ts";
import type { Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";
import { decideDrugAnswer } from "./answerWant.ts";
import { decideCylinder } from "./decideCylinder.ts";
import { decideEquivalents } from "./decideEquivalents.ts";
import { decideFluid } from "./decideFluid.ts";
import { decideGiven } from "./decideGiven.ts";
import { decideHowMuch } from "./decideHowMuch.ts";
import { decideInfusion } from "./decideInfusion.ts";
import { decideMake } from "./decideMake.ts";
import { decideTotal } from "./decideTotal.ts";

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
      | "equivalents"
      | "fluid"
      | "cylinder";
  }
>;

/** What follows from what was said of drugs, fluids and oxygen. */
export function decideDrugs(
  context: AppContext,
  { log }: AppState,
  intent: DrugIntent,
  source: Source,
  nowMs: number,
): Decision {
  switch (intent.kind) {
    case "given":
      return decideGiven(context, log, intent, source, nowMs);
    case "infusion":
      return decideInfusion(context, log, intent, source, nowMs);
    case "howMuch":
      return decideHowMuch(context, log, intent, source, nowMs);
    case "strength":
    case "amount":
    case "rate":
    case "doseUnit":
      return decideDrugAnswer(context, log, intent, source, nowMs);
    case "make":
      return decideMake(context, log, intent, source, nowMs);
    case "total":
      return decideTotal(context, log, intent.drugId);
    case "equivalents":
      return decideEquivalents(context, log, intent.drugId, nowMs);
    case "fluid":
      return decideFluid(context, log, intent, source, nowMs);
    case "cylinder":
      return decideCylinder(context, log, intent, source, nowMs);
  }
}
