import type { CompiledGrammar } from "./compiledGrammar.ts";
import type { GrammarPlace } from "./grammarTypes.ts";

/** Every word that can be said, with the place where it was first written, in the order of the grammar. */
export function vocabulary(
  grammar: CompiledGrammar,
): readonly { readonly word: string; readonly place: GrammarPlace }[] {
  return grammar.words.flatMap((word, i) => {
    const place = grammar.wordPlaces[i];
    return place === undefined ? [] : [{ word, place }];
  });
}
