/** Nothing: the cell is empty. */
export type CsvCell = string | number | undefined;

/** What a spreadsheet takes for the beginning of a formula, also after blanks and in the wide forms. */
const FORMULA = /^[\s\u0000]*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]|^[\t\r\n]/u;
const NEEDS_QUOTES = /[",\r\n]/u;

function csvText(cell: CsvCell): string {
  if (typeof cell === "number") return String(cell);
  if (cell === undefined) return "";
  const harmless = FORMULA.test(cell) ? `'${cell}` : cell;
  return NEEDS_QUOTES.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}

/** One record of a CSV file with its line end, by RFC 4180. A text that a spreadsheet would run as a formula is disarmed; numbers are left alone. */
export const csvLine = (cells: readonly CsvCell[]): string => `${cells.map(csvText).join(",")}\r\n`;
