/** A place in a grammar file, 1-based, for messages to the people who write grammars. */
export type GrammarPlace = { readonly file: string; readonly line: number; readonly column: number };

export type GrammarError = {
  readonly code:
    | "syntax"
    | "unsupported"
    | "unknown-rule"
    | "private-rule"
    | "duplicate-rule"
    | "recursion"
    | "unknown-import"
    | "unknown-word"
    | "nullable-loop";
  readonly message: string;
  readonly place: GrammarPlace;
};

/**
 * A tag met on the way through the grammar, with the words of the expansion it stands after.
 * `<nSys> {sbp}` gives `{ tag: "sbp", words: ["one", "ten"], from: 2, to: 4 }`.
 */
export type Mark = {
  readonly tag: string;
  readonly words: readonly string[];
  /** First word and one past the last, as positions in the utterance. */
  readonly from: number;
  readonly to: number;
};

/** One way to read the whole utterance: its marks, ordered by where they close, inner before outer. */
export type Parse = readonly Mark[];

/** Words in, arcs out: what the acoustic search follows. Deterministic and minimal; tags are gone. */
export type WordGraph = {
  readonly states: number;
  readonly start: number;
  readonly finals: readonly number[];
  /** Sorted by from, then word. */
  readonly arcs: readonly { readonly from: number; readonly to: number; readonly word: string }[];
};
