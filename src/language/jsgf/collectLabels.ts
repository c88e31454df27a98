import type { Expansion, GrammarRule } from "./grammarTree.ts";
import type { GrammarPlace } from "./grammarTypes.ts";
import type { ResolvedRules } from "./resolveRules.ts";
import { childrenOf } from "./walkExpansion.ts";

export type Labels = {
  /** Number of each word, in the order in which they are written, rules followed where they are used. */
  readonly words: ReadonlyMap<string, number>;
  /** Where each word was first written. */
  readonly wordPlaces: readonly GrammarPlace[];
  readonly tags: ReadonlyMap<string, number>;
};

/** Numbers every word and every tag that the entry rules reach. Expects rules without recursion. */
export function collectLabels(entries: readonly GrammarRule[], resolved: ResolvedRules): Labels {
  const words = new Map<string, number>();
  const wordPlaces: GrammarPlace[] = [];
  const tags = new Map<string, number>();
  const seen = new Set<GrammarRule>();
  const visitRule = (rule: GrammarRule): void => {
    if (seen.has(rule)) return;
    seen.add(rule);
    visit(rule.body);
  };
  const visit = (e: Expansion): void => {
    if (e.kind === "word" && !words.has(e.word)) {
      words.set(e.word, wordPlaces.length);
      wordPlaces.push(e.place);
    }
    const rule = e.kind === "rule" ? resolved.get(e) : undefined;
    if (rule !== undefined) visitRule(rule);
    childrenOf(e).forEach(visit);
    if (e.kind === "tagged") for (const tag of e.tags) if (!tags.has(tag)) tags.set(tag, tags.size);
  };
  entries.forEach(visitRule);
  return { words, wordPlaces, tags };
}
