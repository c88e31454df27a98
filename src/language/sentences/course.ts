import type { Phase, SpokenClock } from "../../log/careFacts.ts";
import { sentences } from "./sentence.ts";

const PHASE_NAMES: Readonly<Record<Phase, string>> = {
  assess: "Assessment",
  resuscitate: "Resuscitation",
  prepare: "Preparation",
  induce: "Induction",
  intubate: "Intubation",
  settle: "Settling",
  watch: "Watch",
  handOver: "Handover",
};

/** What the phase is for; nothing is handed over before it is asked for. */
export const OFFER_HANDOVER = "Say handover, or handover short.";

/** A phase in two words: "Induction phase". */
export const sayPhase = (phase: Phase): string => `${PHASE_NAMES[phase]} phase`;

const CLOCK_NAMES: Readonly<Record<SpokenClock, string>> = {
  preoxygenation: "preoxygenation",
  apnoea: "apnoea",
  hyperventilation: "hyperventilation",
};

/**
 * A clock that was started or stopped by voice.
 *
 * @param how    the last two: nothing changed.
 * @param lasted its length as it is said.
 */
export function sayClockChange(
  clock: SpokenClock,
  how: "started" | "stopped" | "runs already" | "not running",
  lasted?: string,
): string {
  return sentences(`${CLOCK_NAMES[clock]} ${how}${lasted === undefined ? "" : `, ${lasted}`}`);
}
