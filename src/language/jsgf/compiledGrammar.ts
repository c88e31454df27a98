import type { GrammarPlace } from "./grammarTypes.ts";

/** Arcs of node n are those from `start[n]` to one before `start[n + 1]`. */
type ArcRange = { readonly start: Int32Array };

/** Arcs taken without a word. `to` is always greater than the node they leave: no loop is possible. */
export type SilentArcs = ArcRange & {
  readonly to: Int32Array;
  /** PLAIN, OPEN, or 0 and more: the tag, an index into `tags`, that closes here. */
  readonly mark: Int32Array;
};

export type WordArcs = ArcRange & {
  readonly to: Int32Array;
  /** Index into `words`. */
  readonly word: Int32Array;
};

export const PLAIN = -1;
export const OPEN = -2;

/** All rules laid out as one automaton with tags on its silent arcs. Plain data: it may cross to a worker. */
export type CompiledGrammar = {
  readonly nodes: number;
  readonly startNode: number;
  readonly finalNode: number;
  readonly silent: SilentArcs;
  readonly word: WordArcs;
  readonly words: readonly string[];
  /** Index into `words`. */
  readonly wordNumbers: ReadonlyMap<string, number>;
  /** Where each word was first written. */
  readonly wordPlaces: readonly GrammarPlace[];
  readonly tags: readonly string[];
};
