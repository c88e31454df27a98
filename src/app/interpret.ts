import type { Intent } from "../language/intent.ts";
import type { CompiledGrammar } from "../language/jsgf/compileGrammar.ts";
import { atStake, type AtStake } from "../language/atStake.ts";
import { normalise } from "../language/normalise/normalise.ts";
import { couldBeInsideLimits } from "../language/understand/couldBeInsideLimits.ts";
import { meaningKey } from "../language/understand/meaningKey.ts";
import { understand, type Understanding } from "../language/understand/understand.ts";
import { m1 as languageMargin, m2 as meaningMargin } from "../listener/margins.ts";
import { certaintyOf, verdictOf, type StatementKind } from "../listener/certainty.ts";
import type { CaseGrammars } from "./compileGrammars.ts";
import type { GrammarState, Utterance } from "./ports.ts";

/** What an utterance means, and how far to trust it. */
export type Interpretation =
  /** Not in the language: changes nothing. */
  | { readonly kind: "outside"; readonly words: string }
  /** In the language, but two meanings were too close to say which, or the sound fits too loosely. */
  | { readonly kind: "unclear"; readonly words: string }
  /** One meaning, clear enough to act on. */
  | { readonly kind: "meant"; readonly words: string; readonly intent: Intent; readonly certainty?: number }
  /** Must be asked back: best meaning first. */
  | {
      readonly kind: "unsure";
      readonly words: string;
      readonly why: "acoustic" | "ambiguous";
      readonly intents: readonly Intent[];
      /** How sure the recogniser is of the best meaning, 0 to 1; none where it came as text. */
      readonly certainty?: number;
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
  const strict = understand(grammars.of(state), words);
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

/** A rival this near, in nats, is offered beside the best meaning when that is asked back. */
export const RIVAL_WITHIN = 8;
/** Words that fit the language this well were meant for it, even where their meaning is lost. See `margins.ts`. */
const MEANT_FOR_US_M1 = -0.2;

const STAKES: Readonly<Record<AtStake, StatementKind>> = { affirmed: "dose", recorded: "step", said: "command" };

function kindOf(intent: Intent): StatementKind {
  switch (intent.kind) {
    case "vitals":
      return "value";
    case "number":
    case "unit":
      return "answer";
    case "command":
      return intent.command === "affirm" || intent.command === "negative" ? "answer" : "command";
    // One syllable ("why", "heard"), which noise and the end of a number can sound like.
    case "why":
      return "answer";
    case "acknowledge":
      return intent.about === "last" ? "answer" : "step";
    case "dose":
      return "dose";
    case "amount":
    case "rate":
    case "doseUnit":
      return "answer";
    case "howMuch":
    case "make":
      return "dose";
    default:
      return STAKES[atStake(intent)];
  }
}

function fromSound(
  grammar: CompiledGrammar,
  utterance: Utterance,
  free: { score: number; phones: number },
  isSurprising: (intent: Intent) => boolean,
): Interpretation {
  // Readings without a meaning stay: a sound that is as near to nonsense as to a value is not clearly that value.
  const all = utterance.candidates.map(({ words, score }) => {
    const meaning = understand(grammar, split(words));
    const intents = intentsOf(meaning);
    const halvesDisagree = meaning.kind === "many" && meaning.halvesDisagree;
    return { words, score, intents, key: keyOf(intents), halvesDisagree };
  });
  const [best] = all;
  // A number said two ways was said so to be believed: "fifteen, one five" is not held against itself as "fifty, one five".
  const agrees = best !== undefined && !best.halvesDisagree;
  const readings: readonly Reading[] = all.map((r) => (agrees && r.halvesDisagree ? { ...r, key: best.key } : r));
  const [first, ...more] = best?.intents ?? [];
  if (best === undefined || first === undefined) return { kind: "outside", words: best?.words ?? "" };
  const { words } = best;
  const m1 = languageMargin(best.score, free);
  const m2 = meaningMargin(readings, (said) => readings.find((r) => r.words === said)?.key);
  const exact = certaintyOf({ m1, m2, phones: free.phones, shape: utterance.shape });
  const certainty = Math.round(exact * 1000) / 1000;
  switch (verdictOf(exact, kindOf(first), best.intents.some(isSurprising))) {
    case "refuse":
      return { kind: m1 >= MEANT_FOR_US_M1 ? "unclear" : "outside", words };
    case "ask": {
      const near = readings.filter((r) => best.score - r.score < RIVAL_WITHIN);
      const other = near.find((r) => r.key !== best.key && r.intents.length > 0);
      const meant = best.intents.map(meaningKey);
      const added = other?.intents.filter((intent) => !meant.includes(meaningKey(intent))) ?? [];
      const why = more.length > 0 && other === undefined ? "ambiguous" : "acoustic";
      return { kind: "unsure", words, why, intents: [...best.intents, ...added], certainty };
    }
    case "take":
      return more.length > 0
        ? { kind: "unsure", words, why: "ambiguous", intents: best.intents, certainty }
        : { kind: "meant", words, intent: first, certainty };
  }
}

/**
 * Words and scores to meaning. Sound is taken, asked back or refused by how certain it is that its best words mean what was
 * said, and by what a mistake would cost. Text has no such measure: it is taken as it stands, and its numbers are still
 * checked by `decide`.
 *
 * @param isSurprising whether the case speaks against an intent: more certainty is demanded then. It never helps one.
 */
export function interpret(
  grammars: CaseGrammars,
  state: GrammarState,
  utterance: Utterance,
  isSurprising: (intent: Intent) => boolean = () => false,
): Interpretation {
  const best = utterance.candidates[0];
  if (best === undefined) return { kind: "outside", words: "" };
  return utterance.free === undefined
    ? fromText(grammars, state, utterance, best.words)
    : fromSound(grammars.of(state), utterance, utterance.free, isSurprising);
}
