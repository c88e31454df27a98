import type { CareIntent } from "../../../language/careIntent.ts";
import type { AppContext, AppState } from "../../context.ts";
import type { Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";
import { decideCase } from "../decideCase.ts";
import { decideStrike } from "../strike/decideStrike.ts";
import { decideTalk } from "../talk/decideTalk.ts";
import { decideCourse } from "./decideCourse.ts";
import { decideDrugs } from "./decideDrugs.ts";
import { decideList } from "./decideList.ts";
import { decideStepQuantity } from "./list/stepQuantity.ts";

/** What follows from what was said of drugs, of the list of steps, of the course of the case, or to the voice itself. */
export function decideCare(
  context: AppContext,
  state: AppState,
  intent: CareIntent,
  source: Source,
  nowMs: number,
): Decision {
  switch (intent.kind) {
    case "strength":
    case "amount":
    case "rate":
      return (
        decideStepQuantity(context, state.log, intent, source, nowMs) ??
        decideDrugs(context, state, intent, source, nowMs)
      );
    case "given":
    case "infusion":
    case "howMuch":
    case "doseUnit":
    case "make":
    case "total":
    case "equivalents":
    case "fluid":
    case "cylinder":
      return decideDrugs(context, state, intent, source, nowMs);
    case "list":
    case "waive":
    case "step":
      return decideList(context, state, intent, source, nowMs);
    case "airway":
    case "phase":
    case "clock":
    case "rescue":
    case "tell":
    case "help":
      return decideCourse(context, state, intent, source, nowMs);
    case "newCase":
    case "eraseCase":
    case "whichCase":
      return decideCase(state.log, intent, source, nowMs);
    case "strike":
      return decideStrike(context, state.log, intent, source, nowMs);
    case "handover":
      return { facts: [], outcome: "answered", reply: intent };
    case "acknowledge":
    case "pauseAlerts":
    case "resumeAlerts":
    case "talkLevel":
    case "voice":
    case "howOld":
      return decideTalk(context, state.log, intent, source, nowMs);
  }
}
