import type { AppContext, AppState } from "../../../src/app/context.ts";
import { callOf, type CallLimits } from "../../../src/app/callWord.ts";
import { FIRST_EARS, stepEars } from "../../../src/app/ears.ts";
import { grammarState } from "../../../src/app/context.ts";
import { interpret } from "../../../src/app/interpret.ts";
import type { Utterance } from "../../../src/app/ports.ts";
import { takeUtterance } from "../../../src/app/takeTurn.ts";
import type { HearingOutput } from "../../../src/listener/hearing.ts";
import { judge, worstOf, type Outcome, type Truth } from "../judge.ts";

/** One sound heard in called listening. */
export type CalledTrial = {
  readonly group: string;
  readonly condition: string;
  readonly said: string;
  readonly utterances: readonly Utterance[];
  /** What the app made of it, from the ears to the facts. */
  readonly outcome: Outcome;
  readonly soundS: number;
};

/** Plays what was heard to the ears, in called listening and uncalled, and what they take to the case. */
export function playCalled(
  context: AppContext,
  start: AppState,
  truth: Truth,
  outputs: readonly HearingOutput[],
  startMs: number,
): Pick<CalledTrial, "utterances" | "outcome"> {
  let state = start;
  let ears = stepEars(FIRST_EARS, { kind: "mode", mode: "called" })[0];
  const utterances: Utterance[] = [];
  const outcomes: Outcome[] = [];
  for (const output of outputs) {
    if (output.kind !== "heard") continue;
    const endedAtMs = startMs + output.endedAtMs;
    const utterance: Utterance = { ...output.heard, by: "listener", endedAtMs };
    utterances.push(utterance);
    const [heard, effects] = stepEars(ears, { kind: "heard", utterance });
    ears = heard;
    for (const effect of effects) {
      if (effect.kind !== "take") continue;
      const meant = interpret(context.grammars, grammarState(context.protocol, state.log), effect.utterance);
      const turn = takeUtterance(context, state, effect.utterance, endedAtMs);
      const outcome = turn.answer?.outcome ?? "ignored";
      outcomes.push(judge(truth, meant, turn.facts, outcome));
      state = turn.state;
      const waits = state.log.questions.length > 0;
      ears = stepEars(ears, { kind: "answered", utterance: effect.utterance, outcome, waits, atMs: endedAtMs })[0];
    }
  }
  return { utterances, outcome: worstOf(outcomes) };
}

export const isWoken = ({ utterances }: CalledTrial, limits?: CallLimits): boolean =>
  utterances.some((utterance) => callOf(utterance, limits).kind !== "uncalled");

/** How often it was woken: each utterance counts. */
export const wakes = (trials: readonly CalledTrial[], limits?: CallLimits): number =>
  trials.flatMap((t) => t.utterances).filter((utterance) => callOf(utterance, limits).kind !== "uncalled").length;
