import type { Sex } from "../core/bodySize.ts";
import type { PupilReaction } from "../core/pupils.ts";
import type { VitalCode } from "../core/vitals.ts";
import type { FindingValue, Level, Method, SaidUnit, Site, Statement } from "../log/facts.ts";
import type { CareIntent } from "./careIntent.ts";
import type { SaidNumber } from "./saidNumber.ts";

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

/** Why ICP is raised. */
export type Cause = NonNullable<Statement["cause"]>;

export type SaidItem =
  | SaidVital
  | ({ readonly kind: "finding" } & FindingValue)
  | { readonly kind: "sex"; readonly sex: Sex }
  | { readonly kind: "cause"; readonly cause: Cause }
  | { readonly kind: "herniation"; readonly present: boolean };

/** What an item is about: said twice, it is one thing said twice. */
export const slotOf = (item: SaidItem): string =>
  item.kind === "vital" || item.kind === "finding" ? item.code : item.kind;

export type Command =
  | "affirm"
  | "negative"
  | "sayAgain"
  | "disregard"
  | "standBy"
  | "status"
  | "readBack"
  | "margin"
  | "everything"
  | "clocks"
  | "next"
  | "whatCanISay"
  | "whichProtocol"
  | "hearMe"
  | "forgetVoice"
  | "notNow";

/** The number whose reason is asked for: the one said last, that of the alert or the dose said last, or one by name. */
export type WhyAbout =
  "last" | "alert" | "dose" | "map" | "cpp" | "sbp" | "spo2" | "hr" | "etco2" | "icp" | "temp" | "glucose";

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
      /** A correction that says no to what we said last: to our question, if that is what we said last. */
      readonly denies?: true;
    }
  /** A bare unit, answering "which unit?". */
  | { readonly kind: "unit"; readonly unit: SaidUnit }
  | { readonly kind: "command"; readonly command: Command }
  /** What the protocol gives this patient of a drug. */
  | { readonly kind: "dose"; readonly drugId: string }
  | { readonly kind: "why"; readonly about: WhyAbout }
  | CareIntent;
