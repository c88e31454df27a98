import type { PageSection } from "./protocolPageTypes.ts";

/** The rows that differ from the bundled protocol, with the headings that they stand under. */
export const onlyDiffering = (sections: readonly PageSection[]): readonly PageSection[] =>
  sections
    .map((section) => ({
      ...section,
      tables: section.tables
        .map((table) => ({ ...table, rows: table.rows.filter((row) => row.difference !== "none") }))
        .filter((table) => table.rows.length > 0),
    }))
    .filter((section) => section.tables.length > 0);
