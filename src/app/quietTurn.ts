import { READ_ONLY } from "../language/sentences/caseRecord.ts";
import type { AppState } from "./context.ts";
import type { Utterance } from "./ports.ts";
import type { Turn } from "./takeTurn.ts";

/** Nothing follows. */
export const emptyTurn = (state: AppState): Turn => ({
  state,
  facts: [],
  answer: undefined,
  announcements: [],
  withdrawn: [],
});

/** Another tab keeps the case: whoever speaks to this one is told. */
export function refusedTurn(state: AppState, { candidates }: Utterance): Turn {
  const words = candidates[0]?.words ?? "";
  return { ...emptyTurn(state), answer: { words, outcome: "refused", reply: READ_ONLY } };
}

/** The same with other words in reply; where nothing was said to it, there is no reply. */
export const withReply = <T extends Pick<Turn, "answer">>(turn: T, reply: string): T =>
  turn.answer === undefined ? turn : { ...turn, answer: { ...turn.answer, reply } };
