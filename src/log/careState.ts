import type { Strength } from "../core/concentration.ts";
import type { DrugClass } from "../protocol/protocol.ts";
import type { AirwayEvent, CareFact, ListMode, Phase, SaidAmount, SaidRate, SpokenClock } from "./careFacts.ts";
import type { StepAnswer, StepValue } from "./facts.ts";

/** One fact of care, newest first; struck ones are taken out of the chain. */
export type Link<T> = T & {
  readonly seq: number;
  readonly atMs: number;
  readonly factId: string;
  readonly earlier: Link<T> | undefined;
};

export type PhaseEntry = Link<{ readonly phase: Phase }>;
export type AirwayEntry = Link<{ readonly event: AirwayEvent }>;
export type ClockEntry = Link<{ readonly runs: boolean }>;
export type StrengthEntry = Link<{
  readonly drugId: string;
  readonly drugClass: DrugClass;
  readonly strength: Strength;
}>;
export type GivenEntry = Link<{
  readonly drugId: string;
  readonly drugClass: DrugClass;
  readonly doseId: string | undefined;
  readonly amount: SaidAmount;
}>;
export type InfusionEntry = Link<{
  readonly drugId: string;
  readonly drugClass: DrugClass;
  readonly infusionId: string | undefined;
  readonly rate: SaidRate;
  readonly mlPerH: number | undefined;
  readonly strength: Strength | undefined;
}>;
export type FluidEntry = Link<{ readonly fluidId: string; readonly volumeMl: number }>;
export type CylinderEntry = Link<{ readonly contentsL: number; readonly fullL: number; readonly flowLPerMin: number }>;
/** The recipe being made: `at` is the step that was spoken last, counted from 0. */
export type RecipeEntry = Link<{
  readonly drugId: string;
  readonly recipeId: string;
  readonly at: number;
  readonly ended: boolean;
}>;
export type RescueEntry = Link<{ readonly runs: boolean }>;
export type StepEntry = Link<{
  readonly answer: StepAnswer;
  readonly value: StepValue | undefined;
  readonly reason: string | undefined;
  readonly role: string | undefined;
}>;

/** When a prompt was last said, for which occurrence of it, and how often. */
export type PromptEntry = { readonly key: string; readonly atMs: number; readonly times: number };

type Cells<T> = Readonly<Record<string, T>>;

/** What was done for the patient. Every record is by the id of the drug, fluid, clock or step. */
export type CareState = {
  readonly phases: PhaseEntry | undefined;
  readonly airway: AirwayEntry | undefined;
  readonly clocks: Readonly<Partial<Record<SpokenClock, ClockEntry>>>;
  readonly strengths: Cells<StrengthEntry>;
  readonly given: Cells<GivenEntry>;
  readonly infusions: Cells<InfusionEntry>;
  readonly fluids: Cells<FluidEntry>;
  readonly cylinder: CylinderEntry | undefined;
  readonly recipe: RecipeEntry | undefined;
  readonly rescue: RescueEntry | undefined;
  readonly list: ListMode;
  readonly prompts: Cells<PromptEntry>;
  /** Facts that "disregard" can take back, newest first; prompts and the reading of the list are none. */
  readonly taken: Link<{ readonly fact: StrikableCare }> | undefined;
};

export type StrikableCare = Exclude<CareFact, { readonly type: "list.read" | "prompt.announced" }>;

export const emptyCare: CareState = {
  phases: undefined,
  airway: undefined,
  clocks: {},
  strengths: {},
  given: {},
  infusions: {},
  fluids: {},
  cylinder: undefined,
  recipe: undefined,
  rescue: undefined,
  list: "off",
  prompts: {},
  taken: undefined,
};
