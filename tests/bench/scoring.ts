import { freshState, grammarState, type AppContext, type AppState } from "../../src/app/context.ts";
import { interpret } from "../../src/app/interpret.ts";
import type { Utterance } from "../../src/app/ports.ts";
import { takeUtterance } from "../../src/app/takeTurn.ts";
import type { HeardSound } from "../../src/listener/hearing.ts";
import { emptyCase } from "../../src/log/caseState.ts";
import { judge, worstOf, type Outcome, type Truth } from "./judge.ts";
import { replayOf, type Replay } from "./replay.ts";

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

export type Scored = {
  readonly outcome: Outcome;
  readonly heardWords: string;
  /** For each utterance that was heard: what would have become of it at other thresholds. */
  readonly replays: readonly Replay[];
};

/** Everything that was heard of one saying, through the app: the worst of it counts. */
export function scoreHeard(
  context: AppContext,
  start: AppState,
  truth: Truth,
  heard: readonly HeardSound[],
  nowMs: number,
): Scored {
  let state = start;
  const outcomes: Outcome[] = [];
  const replays: Replay[] = [];
  for (const { candidates, free } of heard) {
    const scores = free === undefined ? {} : { free };
    const utterance: Utterance = { by: "listener", candidates, ...scores, endedAtMs: nowMs };
    const meant = interpret(context.grammars, grammarState(state.log), utterance);
    const turn = takeUtterance(context, state, utterance, nowMs);
    outcomes.push(judge(truth, meant, turn.facts, turn.answer?.outcome ?? "ignored"));
    replays.push(replayOf(context, state, truth, utterance, nowMs));
    state = turn.state;
  }
  return {
    outcome: worstOf(outcomes),
    heardWords: heard.map((h) => h.candidates[0]?.words ?? "-").join(" / "),
    replays,
  };
}
