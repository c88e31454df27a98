import type { CaseState } from "../log/caseState.ts";
import type { CompiledGrammar } from "../language/jsgf/compileGrammar.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { GrammarState } from "./ports.ts";

/** What a case runs on: fixed from its start to its end. */
export type AppContext = {
  readonly protocol: Protocol;
  readonly grammars: Readonly<Record<GrammarState, CompiledGrammar>>;
};

/** The case, and the little that need not outlive a reload. */
export type AppState = {
  readonly log: CaseState;
  /** What "say again" repeats. */
  readonly lastSaid: string | undefined;
};

/** What may be said now: more, while a question waits. */
export const grammarState = (log: CaseState): GrammarState => (log.questions.length > 0 ? "asked" : "open");
