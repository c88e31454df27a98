/** What a value rests on. `primaryRead`: the number was read in that very document, not in a summary of it. */
export type Source = {
  readonly reference: string;
  readonly kind: SourceKind;
  readonly primaryRead: boolean;
};

export const SOURCE_KINDS = ["guideline", "label", "trial", "textbook", "common-practice", "memory"] as const;
export type SourceKind = (typeof SOURCE_KINDS)[number];

/** Where a number that went into a result comes from. `protocol`: read from the protocol file. */
export type InputKind = "measured" | "computed" | "assumed" | "estimated" | "protocol";

export type DerivationInput = {
  /** As the trade writes it: "SBP", "ICP", "weight". */
  readonly name: string;
  readonly value: number;
  /** As people write it: "mmHg", "kg", "mg/kg"; empty for a ratio. */
  readonly unit: string;
  readonly kind: InputKind;
  /** When it was recorded, Unix ms. None for a value of the protocol or an assumption. */
  readonly atMs?: number;
  /** Where in the protocol file it stands; only for `protocol` and `assumed`. */
  readonly path?: string;
  readonly source?: Source;
};

/** How a kind of result is worked out: one row per formula of `src/core`. */
export type Formula = {
  /** "mean arterial pressure". */
  readonly name: string;
  /** In the names of its inputs: "DBP + (SBP − DBP) / 3". */
  readonly expression: string;
  readonly source: Source;
};

/** How one result came about, as data: enough to say it aloud, to print it and to check it. */
export type Derivation = {
  readonly formula: Formula;
  readonly result: {
    /** As the trade writes it: "MAP", "CPP". */
    readonly name: string;
    readonly value: number;
    readonly unit: string;
    readonly kind: "computed" | "estimated" | "assumed";
  };
  readonly inputs: readonly DerivationInput[];
  /** What the result is held against: a target with its place in the protocol file. */
  readonly against: DerivationInput | undefined;
  /** Where an input was itself worked out. */
  readonly parts: readonly Derivation[];
};

export type Made = {
  readonly formula: Formula;
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly inputs: readonly DerivationInput[];
  readonly against?: DerivationInput | undefined;
  readonly parts?: readonly Derivation[];
};

/**
 * Puts a result and what it was made from together.
 *
 * @param made the result in its own unit, with every input that went into it.
 * @returns    the derivation; its result is `assumed` if an input is, else `estimated` if one is, else `computed`.
 *
 * Not for: doing the arithmetic. The formula of `src/core` did; this only tells of it.
 */
export function derive({ formula, name, value, unit, inputs, against, parts = [] }: Made): Derivation {
  const kinds = inputs.map((input) => input.kind);
  const kind = kinds.includes("assumed") ? "assumed" : kinds.includes("estimated") ? "estimated" : "computed";
  return { formula, result: { name, value, unit, kind }, inputs, against, parts };
}

/** A worked-out result as the input of the next formula. */
export const asInput = ({ result }: Derivation): DerivationInput => ({ ...result });
