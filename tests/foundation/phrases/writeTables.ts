import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { format, resolveConfig } from "prettier";
import { ALERTS_END, ALERTS_START, alertTables } from "../alerts/alertTable.ts";
import { phraseTables, TABLES_END, TABLES_START } from "./phraseTables.ts";

const README = join(import.meta.dirname, "../../../README.md");

function withPart(readme: string, start: string, end: string, part: string): string {
  const [before, rest] = readme.split(start);
  const after = rest?.split(end)[1];
  if (before === undefined || after === undefined) throw new Error(`the README has no place for ${start}`);
  return `${before}${part}${after}`;
}

/** The README with its tables written anew: phrases from the grammars, alerts from the protocol. */
export async function withTables(readme: string): Promise<string> {
  const phrases = withPart(readme, TABLES_START, TABLES_END, phraseTables());
  const all = withPart(phrases, ALERTS_START, ALERTS_END, alertTables());
  return format(all, { ...(await resolveConfig(README)), parser: "markdown" });
}

if (import.meta.filename === process.argv[1]) writeFileSync(README, await withTables(readFileSync(README, "utf8")));
