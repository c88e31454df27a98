import type { StepAnswer } from "../../log/facts.ts";

type SpokenStep = { readonly challenge: string; readonly killer: boolean };

/** The challenge without its question mark, to be followed by the answer. */
const named = (step: SpokenStep): string => step.challenge.replace(/\?$/u, "");

/** The answer read back. A killer item that is passed over is named, so that nobody waives it by accident. */
export function sayStepAnswer(step: SpokenStep, answer: StepAnswer): string {
  switch (answer) {
    case "done":
      return `${named(step)}: done.`;
    case "not-needed":
      return step.killer ? `Critical step not needed: ${named(step)}.` : `${named(step)}: not needed.`;
    case "waived":
      return `${step.killer ? "Critical step waived" : "Waived"}: ${named(step)}.`;
    case "later":
      return `${named(step)}: later.`;
  }
}
