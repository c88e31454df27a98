import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { format, resolveConfig } from "prettier";
import { phraseTables, TABLES_END, TABLES_START } from "./phraseTables.ts";

const README = join(import.meta.dirname, "../../../README.md");

/** The README with its phrase tables written anew from the grammars. */
export async function withTables(readme: string): Promise<string> {
  const [before, rest] = readme.split(TABLES_START);
  const after = rest?.split(TABLES_END)[1];
  if (before === undefined || after === undefined) throw new Error("the README has no place for the phrase tables");
  return format(`${before}${phraseTables()}${after}`, { ...(await resolveConfig(README)), parser: "markdown" });
}

if (import.meta.filename === process.argv[1]) writeFileSync(README, await withTables(readFileSync(README, "utf8")));
