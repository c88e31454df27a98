import { unreachable } from "../../core/unreachable.ts";
import type { Prompt } from "../../rules/prompts/prompt.ts";
import { showSpan } from "./clock.ts";
import { showNumber } from "./number.ts";
import type { UsualUnits } from "./recordedValue.ts";
import { showEndTidal } from "./targets.ts";

const whole = (n: number): string => showNumber(n, 0);

/** "adrenaline empty in 4 min 10 s" as the beginning of a line. */
const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** A prompt on the screen, with digits: what it says aloud, and the number behind it. Not for: the voice, see `sayPrompt`. */
export function showPrompt(prompt: Prompt, usual: UsualUnits): string {
  switch (prompt.promptId) {
    case "stopAttempt":
      return `Out. Oxygenate. SpO2 ${whole(prompt.spo2Pct)} %`;
    case "noCo2":
      return `No CO2 value, tube in ${showSpan(prompt.sinceMs)} ago`;
    case "attemptLimit":
      return `${whole(prompt.attempts)} ${prompt.attempts === 1 ? "attempt" : "attempts"}. Change the plan`;
    case "sedationDue":
      return `Sedation due, ${prompt.paralytic} still acts`;
    case "rescueOver":
      return `Rescue time is up. Target: ${showEndTidal(prompt.etco2MmHg, usual)}${prompt.asks === true ? ". Go on?" : ""}`;
    case "hyperventilationOver":
      return "Hyperventilation time is up";
    case "osmoticOver":
      return capital(`${prompt.agent} should be in`);
    case "bagLow":
      return capital(`${prompt.drug} ${prompt.leftMs === 0 ? "is empty" : `empty in ${showSpan(prompt.leftMs)}`}`);
    case "cylinderLow":
      return prompt.leftMs === 0
        ? "Oxygen cylinder at its reserve"
        : `Oxygen cylinder: ${showSpan(prompt.leftMs)} to its reserve`;
    case "pushDoseAgain":
      return capital(`${prompt.drug} may be repeated`);
    case "pressureDue":
      return prompt.ageMs === undefined ? "Pressure due" : `Pressure due, last ${showSpan(prompt.ageMs)} ago`;
    case "preoxygenated":
      return `Preoxygenation complete, ${showSpan(prompt.forMs)}`;
    case "apnoea":
      return `Apnoea ${showSpan(prompt.forMs)}`;
    case "attempt":
      return `Attempt ${whole(prompt.number)}, ${showSpan(prompt.forMs)}`;
    case "neuroDue":
      return prompt.pupilsOnly ? "Pupils due" : "Pupils and GCS due";
    case "fullSetDue":
      return "Full set due";
    case "stale":
      return `${prompt.what === "spo2" ? "SpO2" : "Pressure"} ${showSpan(prompt.ageMs)} old`;
    case "watchPhase":
      return `Tube in ${showSpan(prompt.forMs)} ago. Watch phase?`;
    default:
      return unreachable(prompt);
  }
}
