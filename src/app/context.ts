import type { CaseState } from "../log/caseState.ts";
import type { ProtocolMark } from "../log/facts.ts";
import { isAfterTube } from "../log/phase.ts";
import { findStep } from "../protocol/findStep.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { CaseGrammars } from "./compileGrammars.ts";
import type { HandoverTalk } from "./handover.ts";
import type { GrammarState } from "./ports.ts";
import type { WhyState } from "./topic.ts";

/** What a case runs on. Another protocol means another context, and a fact that says so. */
export type AppContext = {
  readonly protocol: Protocol;
  /** Which protocol this is, as the record names it. */
  readonly mark: ProtocolMark;
  readonly grammars: CaseGrammars;
};

/** The case, and the little that need not outlive a reload. */
export type AppState = {
  readonly log: CaseState;
  /** What "say again" repeats. */
  readonly lastSaid: string | undefined;
  /** What "why" asks about. */
  readonly why: WhyState;
  /** The handover that was begun last: what "go on" goes on with, and what the screen shows. */
  readonly handover: HandoverTalk | undefined;
};

/** A case at its start or after a reload: nothing was said yet that could be repeated or explained. */
export const freshState = (log: CaseState): AppState => ({
  log,
  lastSaid: undefined,
  why: { lastNumber: undefined, lastDose: undefined, shown: undefined },
  handover: undefined,
});

/** What may be said now: more, while a question or a step that carries a value waits for its answer. */
export function grammarState(protocol: Protocol, log: CaseState): GrammarState {
  const step = log.calledStepId === undefined ? undefined : findStep(protocol, log.calledStepId);
  const waits = log.questions.length > 0 || step?.carries !== undefined;
  if (isAfterTube(log)) return waits ? "askedAfter" : "openAfter";
  return waits ? "asked" : "open";
}
