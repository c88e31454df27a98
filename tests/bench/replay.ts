import { grammarState, type AppContext, type AppState } from "../../src/app/context.ts";
import { decide } from "../../src/app/decide/decide.ts";
import type { Interpretation } from "../../src/app/interpret.ts";
import type { Utterance } from "../../src/app/ports.ts";
import { meaningKey } from "../../src/language/understand/meaningKey.ts";
import { understand } from "../../src/language/understand/understand.ts";
import { m1, m2 } from "../../src/listener/margins.ts";
import { THRESHOLDS, verdictOf, type Thresholds } from "../../src/listener/thresholds.ts";
import { judge, type Outcome, type Truth } from "./judge.ts";

/** One utterance with its margins, and what follows from it on either side of each threshold. */
export type Replay = {
  readonly m1: number;
  readonly m2: number;
  /** Both margins pass. */
  readonly taken: Outcome;
  /** Another meaning was near. */
  readonly doubtfulMeaning: Outcome;
  /** It fitted the language loosely. */
  readonly doubtfulLanguage: Outcome;
};

const NOTHING: Replay = {
  m1: -Infinity,
  m2: -Infinity,
  taken: "silent",
  doubtfulMeaning: "silent",
  doubtfulLanguage: "silent",
};

/** Follows the rules of `interpret` with the thresholds left open, so that other thresholds need no second listening. */
export function replayOf(
  context: AppContext,
  state: AppState,
  truth: Truth,
  { candidates, free }: Utterance,
  nowMs: number,
): Replay {
  const grammar = context.grammars[grammarState(state.log)];
  const readings = candidates.map(({ words }) => {
    const meaning = understand(grammar, words.split(" "));
    const intents = meaning.kind === "one" ? [meaning.intent] : meaning.kind === "many" ? meaning.intents : [];
    return { words, intents, key: intents.map(meaningKey).sort().join(" | ") };
  });
  const [best] = readings;
  const [first, ...more] = best?.intents ?? [];
  if (best === undefined || first === undefined || free === undefined) return NOTHING;
  // Only what is near now is offered, at whatever thresholds the saying is played again.
  const near = readings.filter((_, i) => candidates[0]!.score - candidates[i]!.score < THRESHOLDS.m2Take);
  const rival = near.find((r) => r.key !== best.key && r.intents.length > 0);
  const meant = best.intents.map(meaningKey);
  const added = rival?.intents.filter((intent) => !meant.includes(meaningKey(intent))) ?? [];
  const { words } = best;
  const outcomeOf = (heard: Interpretation): Outcome => {
    const decision = decide(context, state, heard, "listener", nowMs);
    return judge(truth, heard, decision.facts, decision.outcome);
  };
  const unsure = (intents: typeof best.intents, why: "acoustic" | "ambiguous"): Outcome =>
    outcomeOf({ kind: "unsure", words, why, intents });
  const ambiguous = more.length > 0 ? unsure(best.intents, "ambiguous") : undefined;
  return {
    m1: m1(candidates[0]!.score, free),
    m2: m2(candidates, (said) => readings.find((r) => r.words === said)?.key),
    taken: ambiguous ?? outcomeOf({ kind: "meant", words, intent: first }),
    doubtfulMeaning: unsure([...best.intents, ...added], "acoustic"),
    doubtfulLanguage: ambiguous ?? unsure([first], "acoustic"),
  };
}

/** What becomes of the utterance at these thresholds. */
export function outcomeAt(replay: Replay, thresholds: Thresholds): Outcome {
  switch (verdictOf(replay.m1, replay.m2, thresholds)) {
    case "outside":
      return "silent";
    case "level":
      return "refused";
    case "near-another":
      return replay.doubtfulMeaning;
    case "loose":
      return replay.doubtfulLanguage;
    case "clear":
      return replay.taken;
  }
}
