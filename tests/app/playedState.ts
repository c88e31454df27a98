import { freshState } from "../../src/app/context.ts";
import { takeUtterance } from "../../src/app/takeTurn.ts";
import { emptyCase, type CaseState } from "../../src/log/caseState.ts";
import { testContext } from "./playCase.ts";

/** Unix ms at which all lines of `played` are said. */
export const T0_MS = 1_800_000_000_000;

const context = testContext();

/** The case after these typed lines, all said at one moment; every line must be recorded. */
export const played = (lines: readonly string[]): CaseState => play(lines, ["recorded"]);

/** The same, where a line may also ask something. */
export const playedThrough = (lines: readonly string[]): CaseState => play(lines, ["recorded", "asked"]);

function play(lines: readonly string[], outcomes: readonly string[]): CaseState {
  let state = freshState(emptyCase);
  for (const words of lines) {
    const utterance = { by: "typed", candidates: [{ words, score: 0 }], endedAtMs: T0_MS } as const;
    const turn = takeUtterance(context, state, utterance, T0_MS);
    if (!outcomes.includes(turn.answer?.outcome ?? ""))
      throw new Error(`not recorded: ${words} (${turn.answer?.reply ?? ""})`);
    state = turn.state;
  }
  return state.log;
}
