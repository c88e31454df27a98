import { unreachable } from "../../core/unreachable.ts";
import type { Prompt } from "../../rules/prompts/prompt.ts";
import { sayLength } from "./clock.ts";
import { sayNumber } from "./number.ts";
import type { UsualUnits } from "./recordedValue.ts";
import { sentences } from "./sentence.ts";
import { sayEndTidal } from "./targets.ts";

const whole = (n: number): string => sayNumber(n, 0);

/** A prompt aloud: as few words as can be, since it comes unasked. It reminds; it orders nothing but to oxygenate. */
export function sayPrompt(prompt: Prompt, usual: UsualUnits): string {
  switch (prompt.promptId) {
    case "stopAttempt":
      return "Out. Oxygenate.";
    case "noCo2":
      return sentences("No CO2 value", `Tube in ${sayLength(prompt.sinceMs)} ago`);
    case "attemptLimit":
      return sentences(
        `${whole(prompt.attempts)} ${prompt.attempts === 1 ? "attempt" : "attempts"}`,
        "Change the plan",
      );
    case "sedationDue":
      return sentences("Sedation due", `${prompt.paralytic} still acts`);
    case "rescueOver":
      return sentences(
        "Rescue time is up",
        `Target: ${sayEndTidal(prompt.etco2MmHg, usual)}`,
        prompt.asks === true ? "Go on?" : undefined,
      );
    case "hyperventilationOver":
      return "Hyperventilation time is up.";
    case "osmoticOver":
      return sentences(`${prompt.agent} should be in`);
    case "bagLow":
      return sentences(
        prompt.leftMs === 0 ? `${prompt.drug} is empty` : `${prompt.drug} empty in ${sayLength(prompt.leftMs)}`,
      );
    case "cylinderLow":
      return sentences(
        prompt.leftMs === 0
          ? "Oxygen cylinder at its reserve"
          : `Oxygen cylinder: ${sayLength(prompt.leftMs)} to its reserve`,
      );
    case "pushDoseAgain":
      return sentences(`${prompt.drug} may be repeated`);
    case "pressureDue":
      return sentences(
        prompt.ageMs === undefined ? "Pressure due" : `Pressure due, last ${sayLength(prompt.ageMs)} ago`,
      );
    case "preoxygenated":
      return sentences(`Preoxygenation complete, ${sayLength(prompt.forMs)}`);
    case "apnoea":
      return sentences(`Apnoea ${sayLength(prompt.forMs)}`);
    case "attempt":
      return sentences(`Attempt ${whole(prompt.number)}, ${sayLength(prompt.forMs)}`);
    case "neuroDue":
      return prompt.pupilsOnly ? "Pupils due." : "Pupils and Glasgow score due.";
    case "fullSetDue":
      return "Full set due.";
    case "stale":
      return sentences(`${prompt.what === "spo2" ? "Sats" : "Pressure"} ${sayLength(prompt.ageMs)} old`);
    case "watchPhase":
      return sentences(`Tube in ${sayLength(prompt.forMs)}`, "Watch phase?");
    default:
      return unreachable(prompt);
  }
}
