import type { Expansion, GrammarRule } from "./grammarTree.ts";
import type { GrammarError } from "./grammarTypes.ts";
import type { ResolvedRules } from "./resolveRules.ts";
import { childrenOf, referencesIn } from "./walkExpansion.ts";

/** The first rule reference that leads back to its own rule, as an error; `undefined` when there is none. */
export function findRecursion(rules: readonly GrammarRule[], resolved: ResolvedRules): GrammarError | undefined {
  const open = new Set<GrammarRule>();
  const done = new Set<GrammarRule>();
  const visit = (rule: GrammarRule): GrammarError | undefined => {
    open.add(rule);
    for (const reference of referencesIn(rule.body)) {
      const next = resolved.get(reference);
      if (next === undefined || done.has(next)) continue;
      if (open.has(next)) {
        const message = `<${reference.name}> leads back to itself; use * or + for repetition`;
        return { code: "recursion", message, place: reference.place };
      }
      const problem = visit(next);
      if (problem !== undefined) return problem;
    }
    open.delete(rule);
    done.add(rule);
    return undefined;
  };
  for (const rule of rules) {
    const problem = done.has(rule) ? undefined : visit(rule);
    if (problem !== undefined) return problem;
  }
  return undefined;
}

/**
 * The first `*` or `+` over something that may be empty: such a loop could turn for ever without a word.
 * Ask only after findRecursion found nothing.
 */
export function findNullableLoop(rules: readonly GrammarRule[], resolved: ResolvedRules): GrammarError | undefined {
  const known = new Map<GrammarRule, boolean>();
  const ruleMayBeEmpty = (rule: GrammarRule): boolean => {
    const mayBe = known.get(rule) ?? mayBeEmpty(rule.body);
    known.set(rule, mayBe);
    return mayBe;
  };
  const mayBeEmpty = (e: Expansion): boolean => {
    switch (e.kind) {
      case "word":
        return false;
      case "rule": {
        const rule = resolved.get(e);
        return rule !== undefined && ruleMayBeEmpty(rule);
      }
      case "sequence":
        return e.parts.every(mayBeEmpty);
      case "choice":
        return e.options.some(mayBeEmpty);
      case "optional":
        return true;
      case "repeat":
        return e.atLeast === 0 || mayBeEmpty(e.body);
      case "tagged":
        return mayBeEmpty(e.body);
    }
  };
  const look = (e: Expansion): GrammarError | undefined => {
    if (e.kind === "repeat" && mayBeEmpty(e.body)) {
      return { code: "nullable-loop", message: "what is repeated here may be empty", place: e.place };
    }
    return firstOf(childrenOf(e), look);
  };
  return firstOf(rules, (rule) => look(rule.body));
}

function firstOf<T>(items: readonly T[], find: (item: T) => GrammarError | undefined): GrammarError | undefined {
  for (const item of items) {
    const found = find(item);
    if (found !== undefined) return found;
  }
  return undefined;
}
