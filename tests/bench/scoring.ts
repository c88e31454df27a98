import { freshState, type AppContext, type AppState } from "../../src/app/context.ts";
import type { Utterance } from "../../src/app/ports.ts";
import { takeUtterance } from "../../src/app/takeTurn.ts";
import type { HeardSound } from "../../src/listener/hearing.ts";
import { emptyCase } from "../../src/log/caseState.ts";
import { scoreSaying } from "./hearing/saying.ts";
import type { Outcome, Truth } from "./judge.ts";

/** The case after these typed lines, an hour ago: late enough that no value counts as a jump from the last. */
export function caseAfter(context: AppContext, lines: readonly string[], startMs: number): AppState {
  let state: AppState = freshState(emptyCase);
  for (const line of lines) {
    const typed: Utterance = { by: "typed", candidates: [{ words: line, score: 0 }], endedAtMs: startMs };
    const turn = takeUtterance(context, state, typed, startMs);
    if (turn.answer?.outcome === "ignored" || turn.answer?.outcome === "refused")
      throw new Error(`"${line}" was not accepted: ${turn.answer.reply}`);
    state = turn.state;
  }
  return state;
}

/** What became of one saying in which this was heard, through the app: the worst of it counts. */
export function scoreHeard(
  context: AppContext,
  start: AppState,
  truth: Truth,
  heard: readonly HeardSound[],
  nowMs: number,
): { readonly outcome: Outcome; readonly heardWords: string } {
  const { outcome, utterances } = scoreSaying(context, start, truth, heard, nowMs);
  return { outcome, heardWords: utterances.map((u) => u.heard || "-").join(" / ") };
}
