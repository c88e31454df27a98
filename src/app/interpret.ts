import type { Intent } from "../language/intent.ts";
import type { CompiledGrammar } from "../language/jsgf/compileGrammar.ts";
import { normalise } from "../language/normalise/normalise.ts";
import { couldBeInsideLimits } from "../language/understand/couldBeInsideLimits.ts";
import { meaningKey } from "../language/understand/meaningKey.ts";
import { understand, type Understanding } from "../language/understand/understand.ts";
import { m1 as languageMargin, m2 as meaningMargin } from "../listener/margins.ts";
import { THRESHOLDS, verdictOf } from "../listener/thresholds.ts";
import type { CaseGrammars } from "./compileGrammars.ts";
import type { GrammarState, Utterance } from "./ports.ts";

/** What an utterance means, and how far to trust it. */
export type Interpretation =
  /** Not in the language: changes nothing. */
  | { readonly kind: "outside"; readonly words: string }
  /** In the language, but two meanings were too close to say which, or the sound fits too loosely. */
  | { readonly kind: "unclear"; readonly words: string }
  /** One meaning, clear enough to act on. */
  | { readonly kind: "meant"; readonly words: string; readonly intent: Intent }
  /** Must be asked back: best meaning first. */
  | {
      readonly kind: "unsure";
      readonly words: string;
      readonly why: "acoustic" | "ambiguous";
      readonly intents: readonly Intent[];
    };

const split = (words: string): readonly string[] => words.split(" ").filter((w) => w !== "");

/** A typed value that no slot admits: read with any number, and kept only if it is outside the limits of its vital. */
function readWidened(widened: CompiledGrammar | undefined, words: readonly string[]): Understanding {
  const meaning = widened === undefined ? ({ kind: "none" } as const) : understand(widened, words);
  return intentsOf(meaning).some(couldBeInsideLimits) ? { kind: "none" } : meaning;
}

function fromText(grammars: CaseGrammars, state: GrammarState, { by }: Utterance, text: string): Interpretation {
  const words = normalise(text);
  const joined = words.join(" ");
  const strict = understand(grammars[state], words);
  // Speech outside the language is talk and changes nothing; a typed line was meant, and is owed an answer.
  const isOwed = strict.kind === "none" && by === "typed";
  const meaning = isOwed ? readWidened(grammars.widened(), words) : strict;
  switch (meaning.kind) {
    case "none":
      return { kind: "outside", words: joined };
    case "one":
      return { kind: "meant", words: joined, intent: meaning.intent };
    case "many":
      return { kind: "unsure", words: joined, why: "ambiguous", intents: meaning.intents };
  }
}

type Reading = {
  readonly words: string;
  readonly score: number;
  readonly intents: readonly Intent[];
  readonly key: string;
};

const intentsOf = (u: Understanding): readonly Intent[] =>
  u.kind === "none" ? [] : u.kind === "one" ? [u.intent] : u.intents;

/** The same meaning said in other words is one meaning; a reading with several meanings counts as all of them. */
const keyOf = (intents: readonly Intent[]): string => intents.map(meaningKey).sort().join(" | ");

function fromSound(
  grammar: CompiledGrammar,
  utterance: Utterance,
  free: { score: number; phones: number },
): Interpretation {
  // Readings without a meaning stay: a sound that is as near to nonsense as to a value is not clearly that value.
  const readings = utterance.candidates.map(({ words, score }): Reading => {
    const intents = intentsOf(understand(grammar, split(words)));
    return { words, score, intents, key: keyOf(intents) };
  });
  const [best] = readings;
  const [first, ...more] = best?.intents ?? [];
  if (best === undefined || first === undefined) return { kind: "outside", words: best?.words ?? "" };
  const { words } = best;
  const oneMeaning = meaningMargin(readings, (said) => readings.find((r) => r.words === said)?.key);
  const verdict = verdictOf(languageMargin(best.score, free), oneMeaning);
  switch (verdict) {
    case "outside":
      return { kind: "outside", words };
    case "level":
      return { kind: "unclear", words };
    case "near-another": {
      const near = readings.filter((r) => best.score - r.score < THRESHOLDS.m2Take);
      const other = near.find((r) => r.key !== best.key && r.intents.length > 0);
      const meant = best.intents.map(meaningKey);
      const added = other?.intents.filter((intent) => !meant.includes(meaningKey(intent))) ?? [];
      return { kind: "unsure", words, why: "acoustic", intents: [...best.intents, ...added] };
    }
    case "loose":
    case "clear":
      break;
  }
  if (more.length > 0) return { kind: "unsure", words, why: "ambiguous", intents: best.intents };
  return verdict === "clear"
    ? { kind: "meant", words, intent: first }
    : { kind: "unsure", words, why: "acoustic", intents: [first] };
}

/**
 * Words and scores to meaning. Sound is taken only if both margins pass (was it in the language, could it be
 * another value); between the thresholds it is asked back, below them it is refused.
 * Text has no margins: it is taken as it stands, and its numbers are still checked by `decide`.
 */
export function interpret(grammars: CaseGrammars, state: GrammarState, utterance: Utterance): Interpretation {
  const best = utterance.candidates[0];
  if (best === undefined) return { kind: "outside", words: "" };
  return utterance.free === undefined
    ? fromText(grammars, state, utterance, best.words)
    : fromSound(grammars[state], utterance, utterance.free);
}
