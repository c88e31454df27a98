/** One cell. A number is printed as it is; nothing: the cell stays empty. */
export type Cell = string | number | undefined;

/** A table: its header names every column with its unit, where it has one. */
export type Table = { readonly header: readonly string[]; readonly rows: readonly (readonly Cell[])[] };

/**
 * What a spreadsheet would take for a formula, also after blanks and in the wide forms. Such a text gets an apostrophe in
 * front, which spreadsheets take for "this is text". Numbers are ours and stay bare, or every CPP under zero would be text.
 */
const FORMULA = /^[\s\u0000]*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]|^[\t\r\n]/u;
const NEEDS_QUOTES = /[",\r\n]|^\s|\s$/u;

function cellText(cell: Cell): string {
  if (typeof cell !== "string") return cell === undefined ? "" : String(cell);
  const guarded = FORMULA.test(cell) ? `'${cell}` : cell;
  return NEEDS_QUOTES.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}

/**
 * One record of comma-separated values with its CRLF, quotes where they are needed.
 *
 * Source: RFC 4180. The text is to be stored as UTF-8.
 */
export const csvLine = (cells: readonly Cell[]): string => `${cells.map(cellText).join(",")}\r\n`;

/** A table as a whole: header first. */
export const writeCsv = ({ header, rows }: Table): string => [header, ...rows].map(csvLine).join("");
