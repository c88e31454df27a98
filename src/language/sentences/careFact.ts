import { unreachable } from "../../core/unreachable.ts";
import type { StrikableCare } from "../../log/careState.ts";
import { AIRWAY_EVENTS, CLOCKS, PHASES } from "../../log/courseWords.ts";
import { sayAmountOnce, sayMlOnce, sayRateOnce, sayStrengthOnce } from "./amount.ts";
import { sayExactly } from "./number.ts";

/**
 * What was done for the patient in a few words, as it is taken back: "ketamine sixty milligrams given".
 *
 * @param nameOf the name of a drug or of a fluid, by its id.
 */
export function sayCareFact(fact: StrikableCare, nameOf: (id: string) => string): string {
  switch (fact.type) {
    case "phase.entered":
      return `phase ${PHASES[fact.phase]}`;
    case "airway.event":
      return AIRWAY_EVENTS[fact.event];
    case "clock.started":
      return `${CLOCKS[fact.clock]} started`;
    case "clock.stopped":
      return `${CLOCKS[fact.clock]} stopped`;
    case "strength.affirmed":
      return `${nameOf(fact.drugId)} ${sayStrengthOnce(fact.strength)}`;
    case "drug.given":
      return `${nameOf(fact.drugId)} ${sayAmountOnce(fact.amount)} given`;
    case "infusion.set":
      return fact.rate.value === 0
        ? `${nameOf(fact.drugId)} stopped`
        : `${nameOf(fact.drugId)} ${sayRateOnce(fact.rate)}`;
    case "fluid.given":
      return `${nameOf(fact.fluidId)} ${sayMlOnce(fact.volumeMl)}`;
    case "cylinder.recorded":
      return `cylinder ${sayExactly(Math.round(fact.contentsL))} litres at ${sayExactly(fact.flowLPerMin)}`;
    case "recipe.started":
      return `recipe for ${nameOf(fact.drugId)}`;
    case "recipe.moved":
      return "the last step of the recipe";
    case "recipe.ended":
      return "the end of the recipe";
    case "rescue.started":
      return "rescue started";
    case "rescue.ended":
      return "rescue ended";
    case "failure.called":
      return "failed airway";
    default:
      return unreachable(fact);
  }
}
