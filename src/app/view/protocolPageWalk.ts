import type { Source } from "../../core/derivation.ts";
import { showExact, showQuantity, showSpan, unitOf } from "./protocolPageAmount.ts";
import type { DraftRow } from "./protocolPageTypes.ts";
import { labelOf, valueWords } from "./protocolPageWords.ts";

type Group = Readonly<Record<string, unknown>>;
type Choice = NonNullable<DraftRow["choice"]>;

const isGroup = (node: unknown): node is Group => typeof node === "object" && node !== null && !Array.isArray(node);

type SourcedGroup = { readonly value: unknown; readonly source: Source; readonly choice?: Choice };

/** Whatever has a value and a source is one row. The file's own check has seen to what is inside them. */
const isSourced = (node: unknown): node is SourcedGroup => isGroup(node) && "value" in node && isGroup(node["source"]);

const MIDDLES = ["usual", "aim"] as const;

function showGroup(group: Group, unit: string): string {
  const { low, high, base, perYear } = group;
  if (typeof low === "number" && typeof high === "number") {
    const middles = MIDDLES.flatMap((key) => {
      const middle = group[key];
      return typeof middle === "number" ? [`, ${key} ${showExact(middle)}`] : [];
    });
    return showSpan(low, high, unit) + middles.join("");
  }
  if (typeof base === "number" && typeof perYear === "number")
    return `${showExact(base)} + ${showExact(perYear)} × age in years${unit === "" ? "" : `, ${unit}`}`;
  return Object.entries(group)
    .map(([key, inner]) => `${labelOf([key])} ${showValue(inner, unitOf([key]))}`)
    .join("; ");
}

/** A value of the file in words: "110 mmHg", "35 to 45 mmHg", "90 + 2 × age in years, mmHg", "yes". */
export function showValue(value: unknown, unit: string): string {
  if (typeof value === "number") return showQuantity(value, unit);
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return valueWords(value);
  if (Array.isArray(value)) return value.map((each) => showValue(each, unit)).join(", ");
  return isGroup(value) ? showGroup(value, unit) : String(value);
}

/**
 * Rows for everything that stands under one entry of the file: one for each value with a source, and one for each plain
 * value outside of these.
 *
 * @param path  the way to the entry; its last keys say how it is called and in which unit it is.
 * @param under how many keys of the path the heading says already.
 * Not for: lists of entries. What is in them has a form of its own.
 */
export function walkRows(node: unknown, path: readonly string[], under = 0): readonly DraftRow[] {
  const row = { key: path.join("."), label: labelOf(path.slice(under)) };
  if (isSourced(node)) {
    const { value, source, choice } = node;
    return [{ ...row, value: showValue(value, unitOf(path)), source, choice }];
  }
  if (isGroup(node)) return Object.entries(node).flatMap(([key, inner]) => walkRows(inner, [...path, key], under));
  return [{ ...row, value: showValue(node, unitOf(path)) }];
}
