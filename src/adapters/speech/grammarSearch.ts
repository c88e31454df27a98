import { fail, ok, type Result } from "../../core/result.ts";
import { compileGrammar } from "../../language/jsgf/compileGrammar.ts";
import type { GrammarError } from "../../language/jsgf/grammarTypes.ts";
import { vocabulary } from "../../language/jsgf/vocabulary.ts";
import { toWordGraph } from "../../language/jsgf/wordGraph.ts";
import type { Dictionary } from "../../listener/dictionary.ts";
import { buildPhoneGraph } from "../../listener/phoneGraph.ts";
import { createSearch, type Search } from "../../listener/search.ts";

/** Everything that can be said from one public rule, ready for the listener. Errors: those of the grammar's makers. */
export function createGrammarSearch(
  sources: Readonly<Record<string, string>>,
  entry: { readonly grammar: string; readonly rule: string },
  dictionary: Dictionary,
): Result<Search, GrammarError> {
  const grammar = compileGrammar(sources, entry);
  if (!grammar.ok) return fail(grammar.error);
  const graph = buildPhoneGraph(toWordGraph(grammar.value), dictionary, vocabulary(grammar.value));
  return graph.ok ? ok(createSearch(graph.value)) : fail(graph.error);
}

/** One line that says where the grammar is wrong. */
export function grammarErrorText({ message, place }: GrammarError): string {
  return `${place.file}:${place.line}:${place.column}: ${message}`;
}
