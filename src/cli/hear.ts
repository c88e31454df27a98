import { resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { createGrammarSearch, grammarErrorText } from "../adapters/speech/grammarSearch.ts";
import { loadNodeModels, type NodeModels } from "../adapters/speech/nodeListener.ts";
import type { GrammarState } from "../app/ports.ts";
import { parseJsgf } from "../language/jsgf/parseJsgf.ts";
import { parseDictionary } from "../listener/dictionary.ts";
import type { Search } from "../listener/search.ts";
import { openSpokenCase, type SpokenCase } from "./hearCase.ts";
import { hearFile } from "./hearFile.ts";
import { heardNumber } from "./hearNumber.ts";
import { HEAR_HELP, readHearOptions } from "./hearOptions.ts";
import { loadContext } from "./loadContext.ts";
import { readDictionary, readGrammarSources } from "./readGrammars.ts";

const ROOT = resolve(fileURLToPath(import.meta.url), "../../..");

function quit(message: string): never {
  process.stderr.write(`${message}\n`);
  process.exit(2);
}

const print = (line: object): void => void process.stdout.write(`${JSON.stringify(line)}\n`);

function searchFor(grammar: string, rule: string): Search {
  const dictionary = parseDictionary(readDictionary());
  if (!dictionary.ok) quit(`grammars/words.dict:${dictionary.error.line}: ${dictionary.error.message}`);
  const search = createGrammarSearch(readGrammarSources(), { grammar, rule }, dictionary.value);
  return search.ok ? search.value : quit(`grammars/${grammarErrorText(search.error)}`);
}

function firstPublicRule(grammar: string): string {
  const sources = readGrammarSources();
  const source = Object.hasOwn(sources, grammar) ? sources[grammar] : undefined;
  if (source === undefined) quit(`no grammar "${grammar}"; there are: ${Object.keys(sources).sort().join(", ")}`);
  const file = parseJsgf(source, `${grammar}.jsgf`);
  if (!file.ok) quit(`grammars/${grammarErrorText(file.error)}`);
  const rule = grammar === "numbers" ? "number" : file.value.rules.find((r) => r.isPublic)?.name;
  return rule ?? quit(`grammars/${grammar}.jsgf has no public rule`);
}

async function hearWords(files: readonly string[], grammar: string): Promise<void> {
  const search = searchFor(grammar, firstPublicRule(grammar));
  const models = await loadNodeModels(ROOT);
  for (const file of files) {
    const result = await hearFile(file, models, search);
    if (!result.ok) quit(result.error);
    const { heard } = result.value;
    const words = { file, text: heard.candidates[0]?.words ?? "" };
    print(grammar === "numbers" ? { ...words, value: heardNumber(heard) } : words);
  }
}

async function hearCases(files: readonly string[], oneCase: boolean): Promise<void> {
  const context = await loadContext({});
  if (!context.ok) quit(context.error);
  const searches = new Map<GrammarState, Search>();
  const searchOf = (state: GrammarState): Search => {
    const search = searches.get(state) ?? searchFor("case", state);
    searches.set(state, search);
    return search;
  };
  const models: NodeModels = await loadNodeModels(ROOT);
  let kept: SpokenCase | undefined;
  for (const file of files) {
    kept = oneCase && kept !== undefined ? kept : await openSpokenCase(context.value, Date.now());
    const result = await hearFile(file, models, searchOf(kept.grammar()));
    if (!result.ok) quit(result.error);
    const { heard, durationMs } = result.value;
    print({ file, text: heard.candidates[0]?.words ?? "", ...(await kept.answer(heard, durationMs)) });
  }
}

const options = readHearOptions(process.argv.slice(2));
if (!options.ok) quit(options.error);
if (options.value.kind === "help") process.stdout.write(HEAR_HELP);
else if (options.value.grammar !== undefined) await hearWords(options.value.files, options.value.grammar);
else await hearCases(options.value.files, options.value.oneCase);
