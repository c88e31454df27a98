import type { Expansion, RuleReference } from "./grammarTree.ts";

/** The expansions directly inside this one. */
export function childrenOf(expansion: Expansion): readonly Expansion[] {
  switch (expansion.kind) {
    case "word":
    case "rule":
      return [];
    case "sequence":
      return expansion.parts;
    case "choice":
      return expansion.options;
    case "optional":
    case "repeat":
    case "tagged":
      return [expansion.body];
  }
}

/** Every rule reference inside, in the order written. */
export function referencesIn(expansion: Expansion): readonly RuleReference[] {
  return expansion.kind === "rule" ? [expansion] : childrenOf(expansion).flatMap(referencesIn);
}
