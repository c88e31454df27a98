import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { ROOT } from "./lab.ts";
import type { Table } from "./report.ts";

const MB = 1e6;

const BUDGETS: readonly (readonly [name: string, budget: string, counts: (path: string) => boolean])[] = [
  ["first download, before it can listen", "12 MB", (path) => !path.startsWith("voice/") && !path.endsWith(".map")],
  ["built-in voice, loaded after", "16 MB", (path) => path.startsWith("voice/")],
  ["app code (script, style, page)", "0.3 MB", (path) => /\.(js|css|html)$/.test(path) && !path.startsWith("ort/")],
];

/** What a browser downloads, from the built site. */
export function bytesTable(): Table {
  const folder = join(ROOT, "dist");
  const table = (rows: Table["rows"], notes: readonly string[]): Table => ({
    title: "Bytes of the built site",
    notes,
    columns: ["what", "files", "raw MB", "gzip MB", "budget (gzip)"],
    rows,
  });
  if (!existsSync(join(folder, "index.html"))) return table([], ["The site is not built (`npm run build`): skipped."]);
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((path) => path.replaceAll("\\", "/"))
    .filter((path) => statSync(join(folder, path)).isFile())
    .map((path) => {
      const bytes = readFileSync(join(folder, path));
      return { path, raw: bytes.length, gzip: gzipSync(bytes, { level: 9 }).length };
    });
  const rows = BUDGETS.map(([name, budget, counts]) => {
    const counted = files.filter(({ path }) => counts(path));
    const total = (of: "raw" | "gzip"): string => (counted.reduce((sum, file) => sum + file[of], 0) / MB).toFixed(2);
    return [name, counted.length, total("raw"), total("gzip"), budget];
  });
  return table(rows, ["Sum of the files, each compressed by itself, as a server sends them."]);
}
