import type { GrammarName } from "../lab.ts";
import { grammarState, type AppContext, type AppState } from "../../../src/app/context.ts";
import { decide } from "../../../src/app/decide/decide.ts";
import { interpret, type Interpretation } from "../../../src/app/interpret.ts";
import type { Utterance } from "../../../src/app/ports.ts";
import { withoutExactAge } from "../../../src/app/withoutExactAge.ts";
import { takeUtterance } from "../../../src/app/takeTurn.ts";
import type { Intent } from "../../../src/language/intent.ts";
import type { HeardSound } from "../../../src/listener/hearing.ts";
import { NOTHING_TRUE, judge, worstOf, type Outcome, type Truth } from "../judge.ts";
import { evidenceOf, type Evidence } from "./evidence.ts";

export type Material = "statement" | "talk" | "near the language" | "noise" | "people: numbers" | "people: open";

/** One saying, or one stretch of sound, and what came of it: one row of everything the tables are made from. */
export type Saying = {
  readonly material: Material;
  readonly condition: string;
  readonly family: string;
  readonly speaker: string;
  readonly standing: string;
  readonly sex: string;
  readonly accent: string;
  readonly noise: string;
  readonly state: GrammarName;
  /** Empty where nothing was said. */
  readonly said: string;
  readonly outcome: Outcome;
  /** The same words typed are asked back too. */
  readonly askedByRule: boolean;
  /** Of each utterance that was found in it, in order. */
  readonly utterances: readonly Evidence[];
  readonly soundS: number;
};

/** Everything that was heard of one saying, through the app; the worst of it counts. */
export function scoreSaying(
  context: AppContext,
  start: AppState,
  truth: Truth,
  heards: readonly HeardSound[],
  nowMs: number,
): Pick<Saying, "outcome" | "utterances"> {
  let state = start;
  const outcomes: Outcome[] = [];
  const utterances: Evidence[] = [];
  for (const heard of heards) {
    const utterance: Utterance = { ...heard, by: "listener", endedAtMs: nowMs };
    const grammar = grammarState(context.protocol, state.log);
    const turn = takeUtterance(context, state, utterance, nowMs);
    const before = state;
    const judgeTaken = (intent: Intent): Outcome => {
      const clear: Interpretation = { kind: "meant", words: heard.candidates[0]?.words ?? "", intent };
      const decision = decide(context, before, withoutExactAge(clear, before.log), "listener", nowMs);
      return judge(truth, clear, decision.facts, decision.outcome);
    };
    utterances.push(evidenceOf(context, grammar, truth.keys, heard, judgeTaken));
    const meant = interpret(context.grammars, grammar, utterance);
    outcomes.push(judge(truth, meant, turn.facts, turn.answer?.outcome ?? "ignored"));
    state = turn.state;
  }
  return { outcome: worstOf(outcomes), utterances };
}

/** For sound that was not meant for the app each utterance meets the same case: a question that a fault opened must not help the next. */
export function scoreUnmeant(
  context: AppContext,
  start: AppState,
  heards: readonly HeardSound[],
  nowMs: number,
): readonly Pick<Saying, "outcome" | "utterances">[] {
  return heards.map((heard) => scoreSaying(context, start, NOTHING_TRUE, [heard], nowMs));
}
