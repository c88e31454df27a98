import type { VitalCode } from "../core/vitals.ts";
import type { CaseState } from "./caseState.ts";
import type { AffirmedFact, Question } from "./facts.ts";

/** Said of the patient and never affirmed: it is no entry and in no total. */
export type Unconfirmed = {
  readonly questionId: string;
  /** Unix ms at which it was asked back. */
  readonly atMs: number;
  readonly what:
    | { readonly kind: "facts"; readonly facts: readonly AffirmedFact[] }
    /** A dose or an infusion of which the number was still to be said. */
    | { readonly kind: "drug"; readonly drugId: string; readonly runs: boolean }
    | { readonly kind: "values"; readonly codes: readonly VitalCode[] }
    /** The words themselves, heard with a doubt. */
    | { readonly kind: "words"; readonly words: string };
};

const OF_THE_PATIENT: readonly AffirmedFact["type"][] = ["drug.given", "infusion.set", "fluid.given"];

function whatOf(state: CaseState, { acts = [], wants, about, askedAtMs }: Question): Unconfirmed["what"] | undefined {
  const [act] = acts;
  if (act?.kind === "record") {
    const facts = act.facts.filter(({ type }) => OF_THE_PATIENT.includes(type));
    return facts.length === 0 ? undefined : { kind: "facts", facts };
  }
  if (act?.kind === "words") return { kind: "words", words: act.words };
  switch (wants?.kind) {
    case "amount":
    case "amountUnit":
      return { kind: "drug", drugId: wants.drugId, runs: false };
    case "rate":
    case "rateUnit":
      return { kind: "drug", drugId: wants.drugId, runs: true };
    case "strength":
      return wants.forRate && { kind: "drug", drugId: wants.drugId, runs: true };
    default: {
      // A newer value has taken its place.
      const codes = about.filter((code) => (state.vitals[code]?.entry.atMs ?? -Infinity) < askedAtMs);
      return codes.length === 0 ? undefined : { kind: "values", codes };
    }
  }
}

/**
 * What was said of the patient and nobody affirmed, oldest first: in time, or yet. The same dose affirmed later may be
 * another one, so it takes nothing from the list.
 *
 * Not for: totals; nothing of it is an entry.
 */
export const selectUnconfirmed = (state: CaseState): readonly Unconfirmed[] =>
  [...state.unconfirmed, ...state.questions.toReversed()].flatMap((question) => {
    const what = whatOf(state, question);
    return what === undefined ? [] : [{ questionId: question.id, atMs: question.askedAtMs, what }];
  });
