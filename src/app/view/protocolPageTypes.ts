import type { Source } from "../../core/derivation.ts";

/** Where a value comes from, in words. */
export type PageSource = {
  readonly reference: string;
  /** "guideline", "drug label". */
  readonly kind: string;
  /** "read" or "not read: verify". */
  readonly read: string;
};

/** What else could stand here, and why this does. */
export type PageChoice = { readonly instead: string; readonly reason: string };

/** The texts of one row, as they stand in one file. */
export type RowTexts = {
  readonly label: string;
  readonly value: string;
  readonly source: PageSource | undefined;
  readonly choice: PageChoice | undefined;
};

/** One value of the active protocol. A removed row stands only in the bundled one, and shows what stood there. */
export type PageRow = RowTexts & {
  readonly key: string;
  readonly difference: "none" | "changed" | "added" | "removed";
  /** Of a changed row: the bundled texts of those parts that differ. */
  readonly bundled: Partial<RowTexts>;
};

export type PageTable = { readonly key: string; readonly title: string; readonly rows: readonly PageRow[] };
export type PageSection = { readonly key: string; readonly title: string; readonly tables: readonly PageTable[] };

/** The whole protocol in words, for a clinician. */
export type ProtocolPageView = {
  readonly name: string;
  /** "Example protocol, not approved for patients."; empty where its owner has approved it. */
  readonly warning: string;
  readonly hashText: string;
  readonly signatureText: string;
  readonly sections: readonly PageSection[];
  readonly differing: number;
  /** "3 entries differ from the bundled example." */
  readonly differingText: string;
};

/** A row before it is held against the bundled one. `key` names the same entry in both files. */
export type DraftRow = {
  readonly key: string;
  readonly label: string;
  readonly value: string;
  readonly source?: Source | undefined;
  readonly choice?: { readonly instead: readonly string[]; readonly reason: string } | undefined;
};
export type DraftTable = { readonly key: string; readonly title: string; readonly rows: readonly DraftRow[] };
export type DraftSection = { readonly key: string; readonly title: string; readonly tables: readonly DraftTable[] };
