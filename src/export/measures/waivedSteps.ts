import type { RecordedCase } from "../recordedCase.ts";
import { known, unknown, type Measured } from "./measured.ts";

/** Ids of the steps whose last answer is that they were waived, in the order in which they were. One done after all is none. */
export function selectWaivedSteps({ state }: RecordedCase): Measured<readonly string[]> {
  const steps = Object.entries(state.steps);
  if (steps.length === 0 && state.lastCall === undefined) return unknown("list-not-used");
  const waived = steps.filter(([, { answer }]) => answer === "waived").toSorted(([, a], [, b]) => a.seq - b.seq);
  return known(waived.map(([stepId]) => stepId));
}
