import { matchWords } from "../jsgf/matchWords.ts";
import type { CompiledGrammar } from "../jsgf/compiledGrammar.ts";
import type { Intent } from "../intent.ts";
import { couldBeInsideLimits } from "./couldBeInsideLimits.ts";
import { meaningKey } from "./meaningKey.ts";
import { readHalves, readIntents } from "./readIntents.ts";

export type Understanding =
  | { readonly kind: "none" }
  | { readonly kind: "one"; readonly intent: Intent }
  /**
   * The words have several meanings. Two or more, each different. `halvesDisagree`: they have none but by a number said
   * two ways that are two numbers, which hardly anybody says on purpose.
   */
  | { readonly kind: "many"; readonly intents: readonly Intent[]; readonly halvesDisagree: boolean };

/**
 * Words to meaning, through a compiled grammar.
 *
 * Values are not checked here, with one exception: where some readings lie inside the entry limits
 * of every vital they name, readings that do not are dropped ("rate ninety one ten over sixty" is
 * 90 and 110 over 60, not 91 and 10 over 60). When no reading does, all are kept, so that an
 * implausible value is heard as said and can be asked about.
 *
 * Errors: `none` for words outside the grammar, for numbers that cannot be read, and for words with
 * more readings than the matcher lists: what was not seen whole is not taken.
 * Not for: free text; `normalise` it first.
 */
export function understand(grammar: CompiledGrammar, words: readonly string[]): Understanding {
  const { parses, truncated } = matchWords(grammar, words);
  if (truncated) return { kind: "none" };

  const agreeing = parses.flatMap(readIntents);
  const halvesDisagree = agreeing.length === 0;
  const distinct = new Map<string, Intent>();
  for (const intent of halvesDisagree ? parses.flatMap(readHalves) : agreeing) {
    const key = meaningKey(intent);
    if (!distinct.has(key)) distinct.set(key, intent);
  }
  const all = [...distinct.values()];
  const inside = all.filter(couldBeInsideLimits);
  // Of two halves that disagree, limits do not make one the right one.
  const kept = inside.length > 0 && !halvesDisagree ? inside : all;

  const [first, ...others] = kept;
  if (first === undefined) return { kind: "none" };
  return others.length === 0 ? { kind: "one", intent: first } : { kind: "many", intents: kept, halvesDisagree };
}
