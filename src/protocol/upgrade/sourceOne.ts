import type { Source } from "../../core/derivation.ts";

function kindOf(reference: string): Source["kind"] {
  if (/^common practice|no source/iu.test(reference)) return "common-practice";
  return /memory/iu.test(reference) ? "memory" : "guideline";
}

/** A source in free text with its kind, as far as the text gives it away. Whether it was read, it does not say: not. */
export const sourceOne = (reference: string): Source => ({
  reference,
  kind: kindOf(reference),
  primaryRead: false,
});

type SourcedOne<T> = { readonly value: T; readonly source: string };
type SourcedTwo<T> = { readonly value: T; readonly source: Source };

export const sourcedOne = <T>({ value, source }: SourcedOne<T>): SourcedTwo<T> => ({
  value,
  source: sourceOne(source),
});
