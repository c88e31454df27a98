import { writeRecordFile } from "../log/recordFile/writeRecordFile.ts";
import { loadPart } from "./loadPart.ts";
import type { CaseArchive } from "./ports.ts";
import type { Exporter } from "./recordOut.ts";
import type { ExportKind } from "./view/record.ts";

/** The record with its chain, as it stands in the store: it can be read back, and replayed. */
const jsonOf =
  ({ read }: Pick<CaseArchive, "read">): Exporter =>
  async (recorded) => {
    const stored = await read(recorded.caseId);
    if (!stored.ok) throw new Error(stored.error.kind);
    const text = writeRecordFile(recorded, stored.value.entries);
    return [{ name: "record.json", type: "application/json", text }];
  };

const fhir: Exporter = async (recorded, { nowMs }) => {
  const { collectionBundle, documentBundle } = await loadPart(() => import("../export/fhir/bundle.ts"));
  const asFile = (name: string, bundle: object) => ({
    name,
    type: "application/fhir+json",
    text: JSON.stringify(bundle, undefined, 2),
  });
  return [
    asFile("fhir-collection.json", collectionBundle(recorded, nowMs)),
    asFile("fhir-document.json", documentBundle(recorded, nowMs)),
  ];
};

const csv: Exporter = async (recorded, { zone }) => {
  const { csvTables } = await loadPart(() => import("../export/csv/csvTables.ts"));
  return csvTables(recorded, zone).map(({ name, text }) => ({
    name: `${name}.csv`,
    type: "text/csv;charset=utf-8",
    text,
  }));
};

/** What makes files of a record, by form. */
export const exportersOf = (archive: Pick<CaseArchive, "read">): Readonly<Record<ExportKind, Exporter>> => ({
  json: jsonOf(archive),
  fhir,
  csv,
});
