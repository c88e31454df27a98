import { readdirSync, readFileSync } from "node:fs";
import { compileGrammar } from "../../src/language/jsgf/compileGrammar.ts";
import type { CompiledGrammar } from "../../src/language/jsgf/compiledGrammar.ts";

const FOLDER = new URL("../../grammars/", import.meta.url);

/** The grammar files as they are shipped, by name without ".jsgf". */
export const GRAMMAR_SOURCES: Readonly<Record<string, string>> = Object.fromEntries(
  readdirSync(FOLDER)
    .filter((name) => name.endsWith(".jsgf"))
    .map((name) => [name.slice(0, -".jsgf".length), readFileSync(new URL(name, FOLDER), "utf8")]),
);

export const DICTIONARY_TEXT = readFileSync(new URL("words.dict", FOLDER), "utf8");

/** Compiles a public rule of the shipped grammars; a test cannot go on without it. */
export function compiled(grammar: string, rule: string): CompiledGrammar {
  const result = compileGrammar(GRAMMAR_SOURCES, { grammar, rule });
  if (!result.ok) throw new Error(`${grammar}.jsgf does not compile: ${JSON.stringify(result.error)}`);
  return result.value;
}
