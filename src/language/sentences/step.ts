import type { StepAnswer, StepValue } from "../../log/facts.ts";
import { sentences } from "./sentence.ts";
import { sayStepValue } from "./stepValue.ts";

type SpokenStep = { readonly name: string; readonly killer: boolean };

/** An answer with what was said with it. */
export type SpokenAnswer = {
  readonly answer: StepAnswer;
  readonly value?: StepValue | undefined;
  readonly reason?: string | undefined;
  readonly role?: string | undefined;
  /** The words in which a role was given: they say best who does what. */
  readonly heard?: string;
};

const because = (reason: string | undefined): string => (reason === undefined ? "" : `, ${reason}`);

function sayDone(name: string, { value, role, heard }: SpokenAnswer): string {
  if (role !== undefined) {
    const at = heard?.indexOf(role) ?? -1;
    return at >= 0 && heard !== undefined ? heard.slice(at) : `${name}: ${role}`;
  }
  // What was said in two ways with a unit ends in a pause that only the unit needs.
  return `${name}: ${value === undefined ? "done" : sayStepValue(value)}`;
}

/** The answer read back. A killer item that is passed over is named as one, so that nobody waives it by accident. */
export function sayStepAnswer({ name, killer }: SpokenStep, given: SpokenAnswer): string {
  const { answer, reason } = given;
  switch (answer) {
    case "done":
      return sentences(sayDone(name, given));
    case "not-needed":
      return sentences(
        killer ? `Critical step not needed${because(reason)}: ${name}` : `${name}: not needed${because(reason)}`,
      );
    case "waived":
      return sentences(`${killer ? "Critical step waived" : "Waived"}${because(reason)}: ${name}`);
    case "later":
      return sentences(`${name}: later`);
  }
}
