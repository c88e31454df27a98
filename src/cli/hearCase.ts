import { createMemoryFactStore } from "../adapters/storage/memoryFactStore.ts";
import type { AppContext } from "../app/context.ts";
import type { GrammarState, Utterance } from "../app/ports.ts";
import type { HeardSound } from "../listener/hearing.ts";
import { TerminalCase, type AnswerLine } from "./terminalCase.ts";

/** A case that is spoken to in recordings; its clock runs with them. */
export type SpokenCase = {
  /** What may be said now. */
  grammar(): GrammarState;
  answer(heard: HeardSound, durationMs: number): Promise<AnswerLine>;
};

/** Opens a case in memory. What it says unasked is not reported, as there is one line a recording. */
export async function openSpokenCase(context: AppContext, startMs: number): Promise<SpokenCase> {
  const spoken = new TerminalCase(context, createMemoryFactStore(), `case-${startMs}`, startMs);
  await spoken.start();
  return {
    grammar: () => spoken.grammar,
    async answer(heard, durationMs) {
      await spoken.advanceTo(spoken.caseMs + durationMs);
      const utterance: Utterance = { by: "listener", ...heard, endedAtMs: startMs + spoken.caseMs };
      return (await spoken.hear(utterance, heard.candidates[0]?.words ?? "")).answer;
    },
  };
}
