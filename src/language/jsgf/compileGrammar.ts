import { fail, type Result } from "../../core/result.ts";
import type { CompiledGrammar } from "./compiledGrammar.ts";
import { buildAutomaton } from "./buildAutomaton.ts";
import { findNullableLoop, findRecursion } from "./checkRules.ts";
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
  entry: { readonly grammar: string; readonly rule: string },
): Result<CompiledGrammar, GrammarError> {
  const files = loadFiles(sources, entry.grammar);
  if (!files.ok) return files;
  const resolved = resolveRules(files.value);
  if (!resolved.ok) return resolved;
  const rules = [...files.value.values()].flatMap((file) => file.rules);
  const problem = findRecursion(rules, resolved.value) ?? findNullableLoop(rules, resolved.value);
  if (problem !== undefined) return fail(problem);

  const start = files.value.get(entry.grammar)?.rules.find((rule) => rule.name === entry.rule);
  if (start === undefined) {
    const place = { file: `${entry.grammar}.jsgf`, line: 1, column: 1 };
    return fail({ code: "unknown-rule", message: `there is no rule <${entry.rule}>`, place });
  }
  if (!start.isPublic) {
    return fail({ code: "private-rule", message: `<${entry.rule}> is not public`, place: start.place });
  }
  return buildAutomaton(start, resolved.value);
}
