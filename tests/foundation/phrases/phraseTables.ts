import type { GrammarFile } from "../../../src/language/jsgf/grammarTree.ts";
import { loadFiles } from "../../../src/language/jsgf/loadFiles.ts";
import { GRAMMAR_SOURCES } from "../../phrases/caseGrammars.ts";
import { coverPhrases } from "./coverPhrases.ts";
import { PHRASE_FAMILIES } from "./families.ts";

export const TABLES_START = "<!-- phrases: written by tests/foundation/phrases/writeTables.ts -->";
export const TABLES_END = "<!-- end of phrases -->";

/** More than this many in a row are hard to read; the grammar file has the rest. */
const MOST_SHOWN = 32;

function grammarFiles(): ReadonlyMap<string, GrammarFile> {
  const files = loadFiles(GRAMMAR_SOURCES, "case");
  if (!files.ok) throw new Error(files.error.message);
  return files.value;
}

const files = grammarFiles();

/** The phrases shown for a rule. */
export const phrasesOf = (file: string, rule: string): readonly string[] => coverPhrases(files, file, rule);

/** Spread over the whole of a long row, so that its end is seen too. */
function shown(phrases: readonly string[]): readonly string[] {
  if (phrases.length <= MOST_SHOWN) return phrases;
  return Array.from({ length: MOST_SHOWN }, (_, i) => phrases[Math.floor((i * phrases.length) / MOST_SHOWN)]!);
}

/** The phrase tables as they stand in the README. */
export function phraseTables(): string {
  const tables = PHRASE_FAMILIES.map(({ title, rows }) => {
    const lines = rows.map(([file, rule, does]) => {
      const phrases = phrasesOf(file, rule);
      const more = phrases.length > MOST_SHOWN ? " …" : "";
      return `| ${shown(phrases).join(" · ")}${more} | ${does} |`;
    });
    return [`**${title}**`, "", "| You say | What it does |", "| --- | --- |", ...lines].join("\n");
  });
  const inside = ["<details>", "<summary>Everything that can be said</summary>", ...tables, "</details>"];
  return [TABLES_START, ...inside, TABLES_END].join("\n\n");
}
