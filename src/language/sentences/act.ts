import { sentences } from "./sentence.ts";
import { sayStepAnswer, type SpokenAnswer } from "./step.ts";

/** Questions about something that is to be done: each names it whole, so that "affirm" cannot answer another one. */
export const askDoses = (names: readonly string[]): string =>
  sentences(`${names.map((name) => `dose of ${name}`).join(", or ")}?`);

export const askStep = (step: Parameters<typeof sayStepAnswer>[0], given: SpokenAnswer): string =>
  asQuestion(sayStepAnswer(step, given));

/** @param entry what would be struck, as it is read back. */
export const askDisregard = (entry: string): string => asQuestion(`Disregard: ${entry}`);

export const askStandBy = "Stand by?";

const asQuestion = (sentence: string): string => `${sentence.replace(/\.$/u, "")}?`;
