import { ok, type Result } from "../core/result.ts";
import { compileGrammar, type CompiledGrammar } from "../language/jsgf/compileGrammar.ts";
import type { GrammarError } from "../language/jsgf/grammarTypes.ts";
import type { GrammarState } from "./ports.ts";

/** Compiles what may be said in each state of a case, once, at its start. */
export function compileGrammars(
  sources: Readonly<Record<string, string>>,
): Result<Readonly<Record<GrammarState, CompiledGrammar>>, GrammarError> {
  const open = compileGrammar(sources, { grammar: "case", rule: "open" });
  if (!open.ok) return open;
  const asked = compileGrammar(sources, { grammar: "case", rule: "asked" });
  if (!asked.ok) return asked;
  return ok({ open: open.value, asked: asked.value });
}
