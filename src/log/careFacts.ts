import type { DoseUnit, RateUnit } from "../core/doseUnits.ts";
import type { Strength } from "../core/concentration.ts";
import type { Phase } from "../protocol/phases.ts";
import type { DrugClass } from "../protocol/protocol.ts";
import type { HeardBy } from "./heardBy.ts";

export { PHASES, type Phase } from "../protocol/phases.ts";

/** What is done at the airway, as it is called out. `out`: the blade; `tubeOut`: a tube that was in comes out again. */
export type AirwayEvent = "bladeIn" | "out" | "tubeIn" | "tubeConfirmed" | "tubeOut";

/** Clocks that can also be started and stopped by voice; each starts by itself where a fact exists for it. */
export const SPOKEN_CLOCKS = ["preoxygenation", "apnoea", "hyperventilation"] as const;
export type SpokenClock = (typeof SPOKEN_CLOCKS)[number];

/** A quantity of a drug, as said or as worked out. */
export type SaidAmount = { readonly value: number; readonly unit: DoseUnit };
/** 0: stopped. */
export type SaidRate = { readonly value: number; readonly unit: RateUnit };

/** How the preparation is being read: the whole list, the killer items alone, or not by itself. */
export type ListMode = "all" | "killer" | "off";

/** What was heard that led to a fact, and by which way it came in. */
export type Said = { readonly heard: string; readonly by: HeardBy };

/**
 * What was done for the patient. Each was affirmed or needs no affirming; a statement that nobody affirmed is a question
 * that was closed, and never one of these.
 */
export type CareFact =
  | ({ readonly type: "phase.entered"; readonly phase: Phase } & Said)
  | ({ readonly type: "airway.event"; readonly event: AirwayEvent } & Said)
  | ({ readonly type: "clock.started"; readonly clock: SpokenClock } & Said)
  | ({ readonly type: "clock.stopped"; readonly clock: SpokenClock } & Said)
  /** The concentration in the hand, read back and affirmed: the only one that a volume is worked out with. */
  | ({
      readonly type: "strength.affirmed";
      readonly drugId: string;
      readonly drugClass: DrugClass;
      readonly strength: Strength;
    } & Said)
  /** The dose that was spoken last: what is then said to be given was drawn up by it, whatever the plan has become since. */
  | { readonly type: "dose.said"; readonly drugId: string; readonly amount: SaidAmount }
  /** Given at once, as affirmed. `planned` is what the protocol had then; `volumeMl` only where a strength was affirmed. */
  | ({
      readonly type: "drug.given";
      readonly drugId: string;
      readonly drugClass: DrugClass;
      /** The dose of the protocol it was held against. */
      readonly doseId?: string;
      readonly amount: SaidAmount;
      readonly planned?: SaidAmount;
      readonly volumeMl?: number;
    } & Said)
  /** An infusion runs at this rate from now on; rate 0: it was stopped. */
  | ({
      readonly type: "infusion.set";
      readonly drugId: string;
      readonly drugClass: DrugClass;
      readonly infusionId?: string;
      readonly rate: SaidRate;
      /** The weight that a rate per kilogram was worked out with. */
      readonly weightKg?: number;
      /** Only where a strength was affirmed. */
      readonly mlPerH?: number;
      readonly strength?: Strength;
    } & Said)
  | ({ readonly type: "fluid.given"; readonly fluidId: string; readonly volumeMl: number } & Said)
  /** A cylinder: what it holds now, and what is drawn from it. */
  | ({
      readonly type: "cylinder.recorded";
      readonly contentsL: number;
      readonly fullL: number;
      readonly flowLPerMin: number;
    } & Said)
  /** A dilution is made by voice: from the first spoken step to the read-back of what it makes. */
  | ({ readonly type: "recipe.started"; readonly drugId: string; readonly recipeId: string } & Said)
  | ({ readonly type: "recipe.moved"; readonly at: number } & Said)
  | ({ readonly type: "recipe.ended" } & Said)
  /** The time-limited measures against herniation, affirmed; and their end. */
  | ({ readonly type: "rescue.started" } & Said)
  | ({ readonly type: "rescue.ended" } & Said)
  /** The airway was called a failed one: its list is read from here on. */
  | ({ readonly type: "failure.called" } & Said)
  | { readonly type: "list.read"; readonly mode: ListMode }
  /** Said unasked because it was due. `key` tells one occurrence of a prompt from the next. */
  | {
      readonly type: "prompt.announced";
      readonly promptId: string;
      readonly key: string;
      readonly text: string;
      /** A time called out while it runs, or what lies ready: no alert, so it does not count towards their cap. */
      readonly callOut?: true;
      /** Past the cap on what is spoken: it was a tone. */
      readonly unspoken?: true;
    };
