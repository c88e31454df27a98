/** The forms in which the record leaves the device as files. */
export type ExportKind = "json" | "fhir" | "csv";

/** What came of the last wish to take the record out of the device. */
export type RecordOutcome =
  | { readonly kind: "none" }
  | { readonly kind: "printed" }
  | { readonly kind: "saved"; readonly names: readonly string[] }
  | { readonly kind: "failed"; readonly detail: string };

/** The panel from which the record leaves the device. */
export type RecordView = {
  readonly exports: readonly { readonly kind: ExportKind; readonly label: string }[];
  /** Stands there always: what to know before printing. */
  readonly caution: string;
  /** Empty before the first export. */
  readonly notice: string;
  readonly failed: boolean;
};

const LABELS: Readonly<Record<ExportKind, string>> = { json: "Save as JSON", fhir: "FHIR", csv: "CSV" };

const CAUTION = "While the print dialogue is open the browser may hold Tragus still: it may neither hear nor warn.";

function noticeOf(outcome: RecordOutcome): string {
  switch (outcome.kind) {
    case "none":
      return "";
    case "printed":
      return "Handed to the browser’s print. What comes of it lies outside Tragus from now on: erasing the case does not erase it.";
    case "saved":
      return `Handed to the browser: ${outcome.names.join(", ")}. What is saved lies outside Tragus from now on: erasing the case does not erase it.`;
    case "failed":
      return `The record did not leave the device: ${outcome.detail}`;
  }
}

/** @param kinds the forms that there are. */
export const viewRecord = (kinds: readonly ExportKind[], outcome: RecordOutcome): RecordView => ({
  exports: kinds.map((kind) => ({ kind, label: LABELS[kind] })),
  caution: CAUTION,
  notice: noticeOf(outcome),
  failed: outcome.kind === "failed",
});
