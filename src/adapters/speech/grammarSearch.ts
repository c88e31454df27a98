import { fail, ok, type Result } from "../../core/result.ts";
import { compileRules } from "../../language/jsgf/compileGrammar.ts";
import type { GrammarError } from "../../language/jsgf/grammarTypes.ts";
import { vocabulary } from "../../language/jsgf/vocabulary.ts";
import { toWordGraphs } from "../../language/jsgf/wordGraph.ts";
import type { Dictionary } from "../../listener/dictionary.ts";
import { buildPhoneGraph } from "../../listener/phoneGraph.ts";
import { createSearch, type Search } from "../../listener/search.ts";

/** Everything that can be said from one public rule, ready for the listener. Errors: those of the grammar's makers. */
export function createGrammarSearch(
  sources: Readonly<Record<string, string>>,
  { grammar, rule }: { readonly grammar: string; readonly rule: string },
  dictionary: Dictionary,
): Result<Search, GrammarError> {
  const searches = createGrammarSearches(sources, { grammar, rules: [rule] }, dictionary);
  return searches.ok ? ok(searches.value[0]!) : searches;
}

/** The same for several public rules of a file, in their order; together they take hardly longer than the largest. */
export function createGrammarSearches(
  sources: Readonly<Record<string, string>>,
  { grammar, rules }: { readonly grammar: string; readonly rules: readonly string[] },
  dictionary: Dictionary,
): Result<readonly Search[], GrammarError> {
  const grammars = compileRules(sources, grammar, rules);
  if (!grammars.ok) return grammars;
  const [first] = grammars.value;
  const words = first === undefined ? [] : vocabulary(first);
  const searches: Search[] = [];
  for (const graph of toWordGraphs(grammars.value)) {
    const phones = buildPhoneGraph(graph, dictionary, words);
    if (!phones.ok) return fail(phones.error);
    searches.push(createSearch(phones.value));
  }
  return ok(searches);
}

/** One line that says where the grammar is wrong. */
export function grammarErrorText({ message, place }: GrammarError): string {
  return `${place.file}:${place.line}:${place.column}: ${message}`;
}
