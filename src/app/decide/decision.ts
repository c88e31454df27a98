import type { NewFact, Statement } from "../../log/facts.ts";
import type { WhyAbout } from "../../language/intent.ts";
import type { HandoverHow } from "../../language/careIntent.ts";
import type { HowOldAbout } from "../../language/talkIntent.ts";
import type { Outcome } from "../screenView.ts";

/** What the reply is about. Words are made from it once the facts are in, so that they speak of the new state. */
export type Reply =
  | { readonly kind: "words"; readonly text: string }
  /** Read back what was recorded, then ask or say the rest. */
  | { readonly kind: "recorded"; readonly statements: readonly Statement[]; readonly then: string | undefined }
  | { readonly kind: "status" }
  | { readonly kind: "margin" }
  | { readonly kind: "everything" }
  | { readonly kind: "howOld"; readonly about: HowOldAbout }
  | { readonly kind: "handover"; readonly how: HandoverHow }
  /** `heard` names the drug where the protocol has none of that name; `then` follows: the volume, or a question. */
  | { readonly kind: "dose"; readonly drugId: string; readonly heard: string; readonly then: string | undefined }
  | { readonly kind: "why"; readonly about: WhyAbout }
  | { readonly kind: "none" };

export type CaseEffect = { readonly kind: "newCase"; readonly rehearsal: boolean } | { readonly kind: "eraseCase" };

export type Decision = {
  readonly facts: readonly NewFact[];
  readonly outcome: Outcome;
  readonly reply: Reply;
  /** What is done with the case as a whole, once the facts are durable. */
  readonly effect?: CaseEffect;
  /** The reply itself names the step that waits, or says that none is read: the list adds nothing. */
  readonly speaksOfList?: true;
};

/** Says something; the log changes only by what is not a clinical entry (a question closed, a step called). */
export const answered = (text: string, facts: readonly NewFact[] = []): Decision => ({
  facts,
  outcome: "answered",
  reply: { kind: "words", text },
});
/** Puts an entry into the log or strikes one, and says so in these words. */
export const recorded = (text: string, facts: readonly NewFact[]): Decision => ({
  ...answered(text, facts),
  outcome: "recorded",
});
export const refused = (text: string): Decision => ({ ...answered(text), outcome: "refused" });
export const ignored: Decision = { facts: [], outcome: "ignored", reply: { kind: "none" } };
