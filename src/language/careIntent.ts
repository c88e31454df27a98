import type { DoseUnit, RateUnit } from "../core/doseUnits.ts";
import type { AirwayEvent, Phase, SpokenClock } from "../log/careFacts.ts";
import type { StepAnswer } from "../log/facts.ts";
import type { CaseIntent } from "./caseIntent.ts";
import type { SaidNumber } from "./saidNumber.ts";
import type { StrikeIntent } from "./strikeIntent.ts";
import type { TalkIntent } from "./talkIntent.ts";

/** An amount of a drug as said; the unit may be missing. */
export type SpokenAmount = SaidNumber & { readonly unit?: DoseUnit };
/** A rate as said; `mL/h` is one of its units, and the unit may be missing. */
export type SpokenRate = SaidNumber & { readonly unit?: RateUnit };
/** So much drug in so much fluid; no volume: in each millilitre. */
export type SpokenStrength = { readonly amount: SpokenAmount; readonly volumeMl?: SaidNumber };

export const HANDOVERS = ["usual", "short", "all", "goOn"] as const;
export type HandoverHow = (typeof HANDOVERS)[number];

/** What "what can I say" can be asked about. */
export type HelpTopic = "readings" | "drugs" | "list" | "airway" | "clocks" | "alerts";

/** What is said of the course of the case, of what is done for the patient, and to the voice itself. */
export type CareIntent =
  /** "Ketamine given", "ketamine one hundred given"; without a drug, the push dose that was drawn up. */
  | { readonly kind: "given"; readonly drugId?: string; readonly amount?: SpokenAmount }
  /** "How much noradrenaline for eighty kilos at point one": worked out, nothing is recorded. */
  | { readonly kind: "howMuch"; readonly drugId: string; readonly weightKg?: SaidNumber; readonly rate?: SpokenRate }
  | { readonly kind: "infusion"; readonly drugId: string; readonly change: "set" | "stop"; readonly rate?: SpokenRate }
  /** The concentration in the hand, of a drug or as the answer to our question. */
  | { readonly kind: "strength"; readonly drugId?: string; readonly strength: SpokenStrength }
  /** An amount, a rate or a unit alone, as the answer to a question. */
  | { readonly kind: "amount"; readonly amount: SpokenAmount }
  | { readonly kind: "rate"; readonly rate: SpokenRate }
  | { readonly kind: "doseUnit"; readonly unit: DoseUnit | RateUnit }
  /** "Make push dose phenylephrine". */
  | { readonly kind: "make"; readonly drugId: string; readonly purpose: "pushDose" | "infusion" | "any" }
  /** What was given in all: of one drug, or of everything. */
  | { readonly kind: "total"; readonly drugId?: string }
  /** How much of the other osmotic agents has the same load. */
  | { readonly kind: "equivalents"; readonly drugId: string }
  | { readonly kind: "fluid"; readonly fluidId: string; readonly volumeMl: SaidNumber }
  /** Contents in litres, or a gauge pressure in bar with the cylinder's water volume in litres. */
  | {
      readonly kind: "cylinder";
      readonly contentsL?: SaidNumber;
      readonly pressureBar?: SaidNumber;
      readonly waterL?: SaidNumber;
      readonly flowLPerMin?: SaidNumber;
    }
  | { readonly kind: "airway"; readonly event: AirwayEvent }
  | { readonly kind: "phase"; readonly phase: Phase | "next" }
  | { readonly kind: "clock"; readonly clock: SpokenClock; readonly change: "start" | "stop" }
  | {
      readonly kind: "list";
      readonly ask: "read" | "killer" | "pause" | "left" | "failedAirway";
      readonly group?: string;
    }
  /** The step that was called, or the killer items just warned of, are passed over aloud. */
  | { readonly kind: "waive"; readonly reason?: string }
  | { readonly kind: "rescue"; readonly change: "start" | "end" }
  /** What the protocol says of the tube or the ventilator for this patient; how the attempts went. */
  | { readonly kind: "tell"; readonly about: "tube" | "ventilation" | "attempt" }
  | { readonly kind: "help"; readonly topic: HelpTopic }
  /** An answer to the step last called, or to the one that is named. */
  | {
      readonly kind: "step";
      readonly stepId?: string;
      readonly answer: StepAnswer;
      readonly value?: SaidNumber;
      readonly reason?: string;
      readonly role?: string;
    }
  | CaseIntent
  /** The handover: whole within its time, in short, without a limit; or on from where it was cut off. */
  | { readonly kind: "handover"; readonly how: HandoverHow }
  | StrikeIntent
  | TalkIntent;
