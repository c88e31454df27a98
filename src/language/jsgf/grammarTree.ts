import type { GrammarPlace } from "./grammarTypes.ts";

export type RuleReference = {
  readonly kind: "rule";
  /** The file part of `<numbers.nSbp>`, when it was written. */
  readonly qualifier?: string;
  readonly name: string;
  readonly place: GrammarPlace;
};

/** What stands on the right of a rule, as written. */
export type Expansion =
  | { readonly kind: "word"; readonly word: string; readonly place: GrammarPlace }
  | RuleReference
  | { readonly kind: "sequence"; readonly parts: readonly Expansion[] }
  | { readonly kind: "choice"; readonly options: readonly Expansion[] }
  | { readonly kind: "optional"; readonly body: Expansion }
  | { readonly kind: "repeat"; readonly body: Expansion; readonly atLeast: 0 | 1; readonly place: GrammarPlace }
  | { readonly kind: "tagged"; readonly body: Expansion; readonly tags: readonly string[] };

export type GrammarRule = {
  readonly name: string;
  readonly isPublic: boolean;
  readonly body: Expansion;
  readonly place: GrammarPlace;
};

export type GrammarImport = {
  /** Key of the other file, without ".jsgf". */
  readonly from: string;
  /** One rule, or all public ones. */
  readonly rule: string | "*";
  readonly place: GrammarPlace;
};

export type GrammarFile = {
  readonly file: string;
  readonly name: string;
  readonly imports: readonly GrammarImport[];
  readonly rules: readonly GrammarRule[];
};
