import { existsSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";

const FOLDER = resolve(import.meta.dirname, "../../../shared/physiology");

/** Real pressures lie beside the checkout, not in it. Where they do not, their tests are skipped, and the title says so. */
export const hasPhysiology = existsSync(FOLDER);
export const physiologyTitle = (what: string): string =>
  hasPhysiology ? what : `${what} (skipped: the folder ../shared/physiology is not here)`;

export type Row = Readonly<Record<string, string>>;

/** Columns by their names, cells as the text that stands in the file. */
export function readPhysiology(name: string): readonly Row[] {
  const [head = "", ...lines] = readFileSync(join(FOLDER, name), "utf8").trim().split(/\r?\n/);
  const columns = head.split(",");
  return lines.map((line) => {
    const cells = line.split(",");
    return Object.fromEntries(columns.map((column, i) => [column, cells[i] ?? ""]));
  });
}

/** In these tables 0 and an empty cell both mean "not measured". */
export const isMeasured = (cell: string | undefined): cell is string =>
  cell !== undefined && cell !== "" && Number(cell) !== 0;
