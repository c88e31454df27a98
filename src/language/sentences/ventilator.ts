import type { VentilatorPlan, VentilatorPlanError } from "../../rules/ventilatorPlan.ts";
import { sayNumber, sayTwoWays } from "./number.ts";
import type { UsualUnits } from "./recordedValue.ts";
import { sentences } from "./sentence.ts";
import { sayEndTidal } from "./targets.ts";

const whole = (n: number): string => sayNumber(Math.round(n), 0);

/** What to set: volume two ways with its range, the weight it goes by, rate, end pressure, and the CO2 it is to bring. */
export function sayVentilator(plan: VentilatorPlan, usual: UsualUnits): string {
  const { tidalMl, weight, ratePerMin, peepCmH2O, etco2MmHg } = plan;
  const guessed = weight.kind === "estimated" ? ", estimated" : "";
  return sentences(
    `breath volume ${sayTwoWays(Math.round(tidalMl.usual))}, millilitres`,
    `from ${whole(tidalMl.low)} to ${whole(tidalMl.high)}`,
    `${weight.name} weight ${sayNumber(weight.kg, 0)}${guessed}`,
    ratePerMin && `rate ${whole(ratePerMin.low)} to ${whole(ratePerMin.high)}`,
    `end pressure ${sayNumber(peepCmH2O, 0)}`,
    sayEndTidal(etco2MmHg, usual),
  );
}

/** Why nothing can be said, and what to say first. */
export function sayNoVentilator(error: VentilatorPlanError): string {
  switch (error.kind) {
    case "missing":
      return `Breath volume needs ${error.missing.join(" and ")}. Say it first.`;
    case "too-short":
      return `No predicted weight under ${sayNumber(error.fromCm, 1)} centimetres. Work it out by hand.`;
    case "impossible":
      return "Breath volume comes out impossible. Work it out by hand.";
  }
}
