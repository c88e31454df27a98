import { mkdirSync, writeFileSync } from "node:fs";
import { cpus, loadavg } from "node:os";
import { join } from "node:path";
import { ROOT } from "./lab.ts";

export type Cell = string | number;
export type Table = {
  readonly title: string;
  /** What must be known to read it. */
  readonly notes: readonly string[];
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
};

export type RunInfo = {
  readonly date: string;
  readonly machine: string;
  readonly options: string;
  readonly tookS: number;
};

/** With the load, as timings on a machine that does other work too are upper bounds. */
export const machine = (): string =>
  `${cpus().length} cores, ${cpus()[0]?.model.trim() ?? "unknown processor"}, Node ${process.versions.node}, load ${loadavg()[0]!.toFixed(1)}`;

const line = (cells: readonly Cell[]): string =>
  `| ${cells.map((cell) => String(cell).replaceAll("|", "\\|")).join(" | ")} |`;

export function toMarkdown({ title, notes, columns, rows }: Table): string {
  const body =
    rows.length === 0
      ? "_Nothing measured._"
      : [line(columns), line(columns.map(() => "---")), ...rows.map(line)].join("\n");
  return [`## ${title}`, ...notes, body].join("\n\n");
}

/** Writes the tables as `bench/NAME.md` and, with everything behind them, `bench/NAME.json`. */
export function writeReport(name: string, info: RunInfo, tables: readonly Table[], behind: object): void {
  const folder = join(ROOT, "bench");
  mkdirSync(folder, { recursive: true });
  const head = `# Benchmark\n\n${info.date}, ${info.machine}; ${info.options}; took ${info.tookS} s.\n`;
  writeFileSync(join(folder, `${name}.md`), `${[head, ...tables.map(toMarkdown)].join("\n\n")}\n`);
  writeFileSync(join(folder, `${name}.json`), `${JSON.stringify({ ...info, tables, ...behind }, undefined, 1)}\n`);
}
