import data from "./certainty.json" with { type: "json" };
import { certaintyBy, type CertaintyModel, type Evidence } from "./certaintyModel.ts";

/**
 * Kinds of statement by what a mistake costs. value: a reading or a finding, recorded. answer: affirm, negative, a bare
 * number or unit, which settle a question, and "why", which is as short. step: a step of the preparation. dose: the dose
 * of a drug, spoken. command: the rest, which change nothing that cannot be said again.
 */
export const STATEMENT_KINDS = ["value", "answer", "step", "dose", "command"] as const;
export type StatementKind = (typeof STATEMENT_KINDS)[number];

export type Thresholds = {
  /** Taken from here up … */
  readonly take: number;
  /** … or, where anything else speaks for caution, only from here. */
  readonly takeWithCaution: number;
  /** Asked back from here up; below, it may be talk and changes nothing. */
  readonly ask: number;
};

/** How these numbers were come by stands in the same file. */
const model: CertaintyModel = data.model;
const thresholds: Readonly<Record<StatementKind, Thresholds>> = data.thresholds;

/** The probability that an utterance means what its best words mean. See `certaintyModel.ts`. */
export const certaintyOf = (evidence: Evidence): number => certaintyBy(model, evidence);

export type Verdict = "take" | "ask" | "refuse";

/**
 * @param caution something beside the sound speaks for asking (a value far from the last one, a room too loud). It can only
 *                raise what is demanded.
 */
export function verdictOf(certainty: number, kind: StatementKind, caution = false): Verdict {
  const { take, takeWithCaution, ask } = thresholds[kind];
  if (certainty >= (caution ? Math.max(take, takeWithCaution) : take)) return "take";
  return certainty >= ask ? "ask" : "refuse";
}
