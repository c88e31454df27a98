import { fail, ok, type Result } from "../../core/result.ts";
import type { CompiledGrammar } from "./compiledGrammar.ts";
import { buildAutomaton } from "./buildAutomaton.ts";
import { findNullableLoop, findRecursion } from "./checkRules.ts";
import type { GrammarRule } from "./grammarTree.ts";
import type { GrammarError } from "./grammarTypes.ts";
import { loadFiles } from "./loadFiles.ts";
import { resolveRules } from "./resolveRules.ts";

export type { CompiledGrammar };

/**
 * Compiles one public rule, with everything it refers to, for matchWords and toWordGraph.
 *
 * @param sources grammar texts by file name without ".jsgf"; only those that the entry reaches are read.
 * @param entry   file and public rule to start from.
 * Errors: every code of GrammarError but `unknown-word`, with file, line and column.
 * Not for: pronunciations; whether each word has one is asked of the dictionary (buildPhoneGraph).
 */
export function compileGrammar(
  sources: Readonly<Record<string, string>>,
  { grammar, rule }: { readonly grammar: string; readonly rule: string },
): Result<CompiledGrammar, GrammarError> {
  const compiled = compileRules(sources, grammar, [rule]);
  return compiled.ok ? ok(compiled.value[0]!) : compiled;
}

/**
 * The same for several public rules of one file: a grammar for each, in their order. What they share is read and laid
 * out once, and may be given to toWordGraphs together.
 */
export function compileRules(
  sources: Readonly<Record<string, string>>,
  grammar: string,
  names: readonly string[],
): Result<readonly CompiledGrammar[], GrammarError> {
  const files = loadFiles(sources, grammar);
  if (!files.ok) return files;
  const resolved = resolveRules(files.value);
  if (!resolved.ok) return resolved;
  const rules = [...files.value.values()].flatMap((file) => file.rules);
  const problem = findRecursion(rules, resolved.value) ?? findNullableLoop(rules, resolved.value);
  if (problem !== undefined) return fail(problem);

  const entries: GrammarRule[] = [];
  for (const name of names) {
    const entry = files.value.get(grammar)?.rules.find((rule) => rule.name === name);
    if (entry === undefined) {
      const place = { file: `${grammar}.jsgf`, line: 1, column: 1 };
      return fail({ code: "unknown-rule", message: `there is no rule <${name}>`, place });
    }
    if (!entry.isPublic) {
      return fail({ code: "private-rule", message: `<${name}> is not public`, place: entry.place });
    }
    entries.push(entry);
  }
  return buildAutomaton(entries, resolved.value);
}
