import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const GRAMMARS = fileURLToPath(new URL("../../grammars/", import.meta.url));

/** Every grammar file by its name without ".jsgf". */
export function readGrammarSources(): Readonly<Record<string, string>> {
  const names = readdirSync(GRAMMARS).filter((name) => name.endsWith(".jsgf"));
  return Object.fromEntries(names.map((name) => [name.replace(/\.jsgf$/, ""), readFileSync(GRAMMARS + name, "utf8")]));
}

export const readDictionary = (): string => readFileSync(`${GRAMMARS}words.dict`, "utf8");
