import { ok, type Result } from "../core/result.ts";
import { compileGrammar, compileRules, type CompiledGrammar } from "../language/jsgf/compileGrammar.ts";
import type { GrammarError } from "../language/jsgf/grammarTypes.ts";
import { widenNumbers } from "../language/understand/widen.ts";
import type { GrammarState } from "./ports.ts";

export type CaseGrammars = {
  /** What may be said in a state of the case. Those for after the tube are compiled when they are first needed. */
  readonly of: (state: GrammarState) => CompiledGrammar;
  /** Statements with any number in every slot, for typed values outside their limits. Compiled when first needed. */
  readonly widened: () => CompiledGrammar | undefined;
};

/** Does its work at the first call and keeps the result. */
function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}

type Sources = Readonly<Record<string, string>>;
type Pair = readonly [open: CompiledGrammar, asked: CompiledGrammar];

function compilePair(sources: Sources, rules: readonly [GrammarState, GrammarState]): Result<Pair, GrammarError> {
  const compiled = compileRules(sources, "case", rules);
  if (!compiled.ok) return compiled;
  const [open, asked] = compiled.value;
  return ok([open!, asked!]);
}

/** Compiles what may be said in a case. Errors: a fault anywhere in the grammars, also where it is compiled later. */
export function compileGrammars(sources: Sources): Result<CaseGrammars, GrammarError> {
  const before = compilePair(sources, ["open", "asked"]);
  if (!before.ok) return before;
  const [open, asked] = before.value;
  // Every file is read and resolved for the first pair, so that the second can only fail where that one did.
  const after = once((): Pair => {
    const pair = compilePair(sources, ["openAfter", "askedAfter"]);
    return pair.ok ? pair.value : before.value;
  });
  const of = (state: GrammarState): CompiledGrammar => {
    switch (state) {
      case "open":
        return open;
      case "asked":
        return asked;
      case "openAfter":
        return after()[0];
      case "askedAfter":
        return after()[1];
    }
  };
  const widened = once(() => {
    const wide = compileGrammar(widenNumbers(sources), { grammar: "vitals", rule: "statement" });
    return wide.ok ? wide.value : undefined;
  });
  return ok({ of, widened });
}
