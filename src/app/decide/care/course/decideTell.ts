import { sayAttempts } from "../../../../language/sentences/attempt.ts";
import { sayNoTube, sayTube } from "../../../../language/sentences/tube.ts";
import { sayNoVentilator, sayVentilator } from "../../../../language/sentences/ventilator.ts";
import { selectAttempts, selectFirstAttempt } from "../../../../log/attemptRecord.ts";
import type { CaseState } from "../../../../log/caseState.ts";
import { planTube } from "../../../../rules/tubePlan.ts";
import { planVentilator } from "../../../../rules/ventilatorPlan.ts";
import type { AppContext } from "../../../context.ts";
import { answered, type Decision } from "../../decision.ts";

/** What is asked of the tube, the ventilator or the attempts. */
export function decideTell(
  { protocol }: AppContext,
  log: CaseState,
  about: "tube" | "ventilation" | "attempt",
  nowMs: number,
): Decision {
  switch (about) {
    case "tube": {
      const plan = planTube(log, protocol);
      return answered(plan.ok ? sayTube(plan.value) : sayNoTube(plan.error));
    }
    case "ventilation": {
      const plan = planVentilator(log, protocol);
      return answered(plan.ok ? sayVentilator(plan.value, protocol.region) : sayNoVentilator(plan.error));
    }
    case "attempt":
      return answered(sayAttempts(selectAttempts(log, protocol, nowMs), selectFirstAttempt(log, protocol)));
  }
}
