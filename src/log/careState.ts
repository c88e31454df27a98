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
  readonly weightKg: number | undefined;
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
export type FailureEntry = Link<object>;
export type StepEntry = Link<{
  readonly answer: StepAnswer;
  readonly value: StepValue | undefined;
  readonly reason: string | undefined;
  readonly role: string | undefined;
  readonly heard: string;
}>;

/** When a prompt was last said, for which occurrence of it, and how often. */
export type PromptEntry = {
  readonly key: string;
  readonly atMs: number;
  readonly seq: number;
  readonly times: number;
  /** The occurrences before it, newest first: a strike can bring one of them back, and it was said then. */
  readonly before: readonly { readonly key: string; readonly atMs: number }[];
  /** The occurrence that somebody has acknowledged. */
  readonly acknowledgedKey: string | undefined;
};

type Cells<T> = Readonly<Record<string, T>>;

/** What was done for the patient. Every record is by the id of the drug, fluid, clock or step. */
export type CareState = {
  readonly phases: PhaseEntry | undefined;
  readonly airway: AirwayEntry | undefined;
  readonly clocks: Readonly<Partial<Record<SpokenClock, ClockEntry>>>;
  readonly strengths: Cells<StrengthEntry>;
  readonly given: Cells<GivenEntry>;
  /** The dose of each drug that was spoken last. */
  readonly dosesSaid: Cells<SaidAmount>;
  readonly infusions: Cells<InfusionEntry>;
  readonly fluids: Cells<FluidEntry>;
  readonly cylinder: CylinderEntry | undefined;
  readonly recipe: RecipeEntry | undefined;
  readonly rescue: RescueEntry | undefined;
  /** The last time the airway was called a failed one. */
  readonly failure: FailureEntry | undefined;
  readonly list: ListMode;
  /** Number of the fact since which the list is read so: what is put off after it waits for another reading. */
  readonly listSeq: number;
  readonly prompts: Cells<PromptEntry>;
  /** Facts that "disregard" can take back, newest first; prompts and the reading of the list are none. */
  readonly taken: Link<{ readonly fact: StrikableCare }> | undefined;
};

export type StrikableCare = Exclude<CareFact, { readonly type: "dose.said" | "list.read" | "prompt.announced" }>;

export const emptyCare: CareState = {
  phases: undefined,
  airway: undefined,
  clocks: {},
  strengths: {},
  given: {},
  dosesSaid: {},
  infusions: {},
  fluids: {},
  cylinder: undefined,
  recipe: undefined,
  rescue: undefined,
  failure: undefined,
  list: "off",
  listSeq: -1,
  prompts: {},
  taken: undefined,
};
