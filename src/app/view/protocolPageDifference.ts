import { showSourceKind } from "../../language/sentences/source.ts";
import type {
  DraftRow,
  DraftSection,
  DraftTable,
  PageRow,
  PageSection,
  PageTable,
  RowTexts,
} from "./protocolPageTypes.ts";

function textsOf({ label, value, source, choice }: DraftRow): RowTexts {
  return {
    label,
    value,
    source: source && {
      reference: source.reference,
      kind: showSourceKind(source.kind),
      read: source.primaryRead ? "read" : "not read: verify",
    },
    choice: choice && { instead: choice.instead.join("; "), reason: choice.reason },
  };
}

const PARTS = ["label", "value", "source", "choice"] as const;

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** The bundled texts of the parts that are not the same. */
const differingParts = (now: RowTexts, bundled: RowTexts): Partial<RowTexts> =>
  Object.fromEntries(PARTS.filter((part) => !isSame(now[part], bundled[part])).map((part) => [part, bundled[part]]));

type Keyed<T> = readonly (readonly [key: string, entry: T])[];

/** Two entries with one key are told apart by their order, so that none hides the other. */
function keyed<T extends { readonly key: string }>(entries: readonly T[]): Keyed<T> {
  const seen = new Map<string, number>();
  return entries.map((entry) => {
    const count = seen.get(entry.key) ?? 0;
    seen.set(entry.key, count + 1);
    return [count === 0 ? entry.key : `${entry.key} ${count + 1}`, entry];
  });
}

/** What stands in either, each beside its like in the other; what only the bundled one has comes last. */
function paired<T extends { readonly key: string }>(now: readonly T[], bundled: readonly T[]) {
  const [ours, theirs] = [new Map(keyed(now)), new Map(keyed(bundled))];
  return [...new Set([...ours.keys(), ...theirs.keys()])].map((key) => ({
    key,
    now: ours.get(key),
    bundled: theirs.get(key),
  }));
}

function compareRow(key: string, now: DraftRow | undefined, bundled: DraftRow | undefined): readonly PageRow[] {
  const [ours, theirs] = [now && textsOf(now), bundled && textsOf(bundled)];
  if (ours === undefined)
    return theirs === undefined ? [] : [{ ...theirs, key, difference: "removed" as const, bundled: {} }];
  if (theirs === undefined) return [{ ...ours, key, difference: "added", bundled: {} }];
  const parts = differingParts(ours, theirs);
  return [{ ...ours, key, difference: Object.keys(parts).length === 0 ? "none" : "changed", bundled: parts }];
}

const compareTable = (key: string, now: DraftTable | undefined, bundled: DraftTable | undefined): PageTable => ({
  key,
  title: now?.title ?? bundled?.title ?? "",
  rows: paired(now?.rows ?? [], bundled?.rows ?? []).flatMap((row) => compareRow(row.key, row.now, row.bundled)),
});

/** Both files, row for row. */
export const compareSections = (
  now: readonly DraftSection[],
  bundled: readonly DraftSection[],
): readonly PageSection[] =>
  paired(now, bundled).map((section) => ({
    key: section.key,
    title: section.now?.title ?? section.bundled?.title ?? "",
    tables: paired(section.now?.tables ?? [], section.bundled?.tables ?? []).map((table) =>
      compareTable(table.key, table.now, table.bundled),
    ),
  }));
