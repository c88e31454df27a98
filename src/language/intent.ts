import type { VitalCode } from "../core/vitals.ts";
import type { FindingValue, Level, Method, PupilReaction, SaidUnit, Sex, Site, StepAnswer } from "../log/facts.ts";

/** A number with the words that said it. `words` keeps the form ("fifteen" or "one five"): the form decides what must be asked back. */
export type SaidNumber = { readonly value: number; readonly words: string };

/** One value as said: the unit may be missing, the limits are not checked yet. */
export type SaidVital = SaidNumber & {
  readonly kind: "vital";
  readonly code: VitalCode;
  readonly unit?: SaidUnit;
  readonly method?: Method;
  readonly site?: Site;
  readonly level?: Level;
  readonly reaction?: PupilReaction;
};

export type SaidItem =
  SaidVital | ({ readonly kind: "finding" } & FindingValue) | { readonly kind: "sex"; readonly sex: Sex };

export type Command =
  "affirm" | "negative" | "sayAgain" | "disregard" | "standBy" | "status" | "readBack" | "next" | "whatCanISay";

/** What an utterance means. Two word sequences with equal intents (words aside) have the same meaning. */
export type Intent =
  | {
      readonly kind: "vitals";
      readonly correction: boolean;
      readonly items: readonly SaidItem[];
      /** The words sound like others with another meaning: to be asked back when they were spoken. */
      readonly doubtful: boolean;
    }
  /** A bare number, only where a question or a correction gives it a slot. A bare pair is a pressure. */
  | {
      readonly kind: "number";
      readonly correction: boolean;
      readonly number: SaidNumber;
      readonly unit?: SaidUnit;
    }
  /** A bare unit, answering "which unit?". */
  | { readonly kind: "unit"; readonly unit: SaidUnit }
  | { readonly kind: "command"; readonly command: Command }
  /** An answer to the step last called, or to the one that is named. */
  | { readonly kind: "step"; readonly stepId?: string; readonly answer: StepAnswer };
