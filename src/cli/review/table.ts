import type { BelowFloor, FloorId } from "../../export/measures/floors.ts";
import type { LowestOf } from "../../export/measures/lowest.ts";
import type { Measured } from "../../export/measures/measured.ts";
import type { ReviewedCase } from "./reviewedCase.ts";

const UNKNOWN = "?";

/** One decimal, but a whole number stands bare: what is only small must not look like nought. */
export const oneDecimal = (value: number): string => (Number.isInteger(value) ? String(value) : value.toFixed(1));

const shown = <T>(measured: Measured<T>, show: (value: T) => string): string =>
  "value" in measured ? show(measured.value) : UNKNOWN;

const yesNo = (measured: Measured<boolean>): string => shown(measured, (value) => (value ? "yes" : "no"));
const low = (measured: Measured<LowestOf>): string => shown(measured, ({ value }) => value.toFixed(0));

/** Minutes, dose and unknown minutes under a floor. */
const below = ({ measures }: ReviewedCase, id: FloorId): string =>
  shown<BelowFloor>(measures.floors.find((floor) => floor.id === id)?.below ?? { unknown: "not-measured" }, (floor) =>
    [floor.belowMin, floor.doseMmHgMin, floor.unknownMin].map(oneDecimal).join("/"),
  );

function attempts({ measures }: ReviewedCase): string {
  return shown(measures.attempts, (all) => {
    const lengths = all.map(({ lengthS }) => shown(lengthS, (seconds) => String(Math.round(seconds))));
    return `${all.length} (${lengths.join(", ")} s)`;
  });
}

const NOTES: readonly (readonly [string, (row: ReviewedCase) => boolean])[] = [
  ["rehearsal", ({ rehearsal }) => rehearsal],
  ["other protocol", ({ ownProtocol }) => ownProtocol === "other"],
  ["protocol not known", ({ ownProtocol }) => ownProtocol === "unknown"],
  ["age not known", ({ measures }) => !measures.ageKnown],
  ["clock set", ({ measures }) => measures.clockChanges > 0],
];

type Column = { readonly header: string; readonly width: number; readonly cell: (row: ReviewedCase) => string };

const COLUMNS: readonly Column[] = [
  { header: "case", width: 20, cell: ({ label }) => label },
  { header: "pass", width: 4, cell: ({ measures }) => yesNo(measures.firstPass) },
  { header: "no low", width: 6, cell: ({ measures }) => yesNo(measures.firstPassWithoutLow) },
  { header: "attempts", width: 14, cell: attempts },
  { header: "SBP", width: 4, cell: ({ measures }) => low(measures.around.sbp) },
  { header: "MAP", width: 4, cell: ({ measures }) => low(measures.around.map) },
  { header: "CPP", width: 4, cell: ({ measures }) => low(measures.around.cpp) },
  { header: "SpO2", width: 4, cell: ({ measures }) => low(measures.around.spo2) },
  { header: "under SBP", width: 15, cell: (row) => below(row, "sbpTarget") },
  { header: "under MAP", width: 15, cell: (row) => below(row, "mapTarget") },
  { header: "under CPP", width: 15, cell: (row) => below(row, "cppTarget") },
  { header: "sedation", width: 8, cell: ({ measures }) => shown(measures.sedationMin, oneDecimal) },
  {
    header: "CO2 low",
    width: 7,
    cell: ({ measures }) => shown(measures.overVentilation, (v) => oneDecimal(v.belowMin)),
  },
  { header: "BP low", width: 6, cell: ({ measures }) => shown(measures.postIntubation, (v) => (v.low ? "yes" : "no")) },
  { header: "waived", width: 6, cell: ({ measures }) => shown(measures.waived, (steps) => String(steps.length)) },
];

/** What may stand on a terminal: names of files and labels come from anybody. */
export const printable = (text: string): string => text.replace(/[\p{Cc}\p{Cf}\u2028\u2029]+/gu, " ").trim();

const FILE_MOST = 32;
const fitted = (text: string, width: number): string =>
  (text.length > width ? `…${text.slice(text.length - width + 1)}` : text).padEnd(width);

/** How wide the column of file names must be. */
export const fileWidth = (paths: readonly string[]): number =>
  Math.min(
    FILE_MOST,
    paths.reduce((most, path) => Math.max(most, printable(path).length), "file".length),
  );

const line = (cells: readonly string[]): string => cells.join("  ").trimEnd();

export const tableHead = (width: number): string =>
  line(["file".padEnd(width), ...COLUMNS.map(({ header, width: own }) => header.padEnd(own)), "notes"]);

/** A case in one line. A cell that is too long is not cut, but for the name of the file: a number must stand whole. */
export function tableRow(row: ReviewedCase, width: number, more: readonly string[]): string {
  const notes = [...NOTES.flatMap(([note, holds]) => (holds(row) ? [note] : [])), ...more];
  const cells = COLUMNS.map(({ cell, width: own }) => printable(cell(row)).padEnd(own));
  return line([fitted(printable(row.file), width), ...cells, notes.join(", ")]);
}

export const skippedRow = (file: string, why: string, width: number): string =>
  line([fitted(printable(file), width), `skipped: ${printable(why)}`]);
