import { ok, type Result } from "../core/result.ts";
import { compileGrammar, compileRules, type CompiledGrammar } from "../language/jsgf/compileGrammar.ts";
import type { GrammarError } from "../language/jsgf/grammarTypes.ts";
import { widenNumbers } from "../language/understand/widen.ts";
import type { GrammarState } from "./ports.ts";

export type CaseGrammars = Readonly<Record<GrammarState, CompiledGrammar>> & {
  /** Statements with any number in every slot, for typed values outside their limits. Compiled when first needed. */
  readonly widened: () => CompiledGrammar | undefined;
};

/** Does its work at the first call and keeps the result. */
function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}

/** Compiles what may be said in each state of a case, once, at its start. */
export function compileGrammars(sources: Readonly<Record<string, string>>): Result<CaseGrammars, GrammarError> {
  const compiled = compileRules(sources, "case", ["open", "asked"]);
  if (!compiled.ok) return compiled;
  const [open, asked] = compiled.value;
  const widened = once(() => {
    const wide = compileGrammar(widenNumbers(sources), { grammar: "vitals", rule: "statement" });
    return wide.ok ? wide.value : undefined;
  });
  return ok({ open: open!, asked: asked!, widened });
}
