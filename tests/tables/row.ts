/** Where a row comes from. `read`: what was opened to see the number; "memory" and "by hand" were not read anywhere. */
export type RowSource = {
  readonly reference: string;
  /** Table, section, page or formula inside it. */
  readonly locator: string;
  readonly read: "primary" | "abstract" | "summary" | "memory" | "by hand";
};

/** A row is the authority, not the code. `decimals` as printed set the tolerance: half of the last digit. */
export type PublishedRow<In> = {
  readonly given: In;
  readonly expected: number;
  readonly decimals: number;
  readonly source: RowSource;
};

/** Half of the last printed digit, and what doubles lose. */
export const halfDigit = (decimals: number): number => 0.5 * 10 ** -decimals + 1e-9;
