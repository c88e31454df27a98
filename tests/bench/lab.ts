import { fileURLToPath } from "node:url";
import { createGrammarSearches, grammarErrorText } from "../../src/adapters/speech/grammarSearch.ts";
import { loadNodeModels, type NodeModels } from "../../src/adapters/speech/nodeListener.ts";
import type { AppContext } from "../../src/app/context.ts";
import type { GrammarState } from "../../src/app/ports.ts";
import { loadContext } from "../../src/cli/loadContext.ts";
import { readDictionary, readGrammarSources } from "../../src/cli/readGrammars.ts";
import { parseDictionary } from "../../src/listener/dictionary.ts";
import { createHearing, type HeardSound, type HearingOutput, type ListenedSound } from "../../src/listener/hearing.ts";
import type { Search } from "../../src/listener/search.ts";
import { frameSpeech } from "../../src/listener/vadTrim.ts";
import { createVoicesTogether } from "./voicesTogether.ts";

export const ROOT = fileURLToPath(new URL("../../", import.meta.url));
export const RATE_HZ = 16_000;
const BLOCK_SAMPLES = 2_048;

export type GrammarName = GrammarState | "numbers";

/** The listener of the app under Node, with its grammars, and the case it speaks to. */
export type Lab = {
  readonly context: AppContext;
  readonly models: NodeModels;
  readonly searches: Readonly<Record<GrammarName, Search>>;
  /** As in open listening: voice activity and end-pointing decide what an utterance is. There may be several, or none. */
  hearOpen(pcm: Float32Array, state: GrammarState): Promise<readonly HeardSound[]>;
  /** The same with all that hearing tells, its times in ms from the start; `called` is the grammar of called listening. */
  hearAll(pcm: Float32Array, graph: GrammarState | "called"): Promise<readonly HearingOutput[]>;
  /** As in held listening: all of it is one utterance. */
  hearHeld(pcm: Float32Array, grammar: GrammarName): Promise<HeardSound>;
};

export const searchFor = (grammar: string, rule: string): Search => searchesFor(grammar, [rule])[0]!;

export function searchesFor(grammar: string, rules: readonly string[]): readonly Search[] {
  const dictionary = parseDictionary(readDictionary());
  if (!dictionary.ok) throw new Error(`words.dict:${dictionary.error.line}: ${dictionary.error.message}`);
  const searches = createGrammarSearches(readGrammarSources(), { grammar, rules }, dictionary.value);
  if (!searches.ok) throw new Error(grammarErrorText(searches.error));
  return searches.value;
}

export async function openLab(): Promise<Lab> {
  const context = await loadContext({});
  if (!context.ok) throw new Error(context.error);
  const models = await loadNodeModels(ROOT);
  const newVoice = await createVoicesTogether();
  const searches = {
    open: searchFor("case", "open"),
    asked: searchFor("case", "asked"),
    openAfter: searchFor("case", "openAfter"),
    askedAfter: searchFor("case", "askedAfter"),
    numbers: searchFor("numbers", "number"),
  };
  let called: Search | undefined;
  const searchOf = (name: GrammarName | "called"): Search =>
    name === "called" ? (called ??= searchFor("case", "called")) : searches[name];
  const listen = async (pcm: Float32Array, grammar: GrammarName | "called"): Promise<ListenedSound> => {
    const { candidates, free, shape, goesOn } = await models.listenerFor(searchOf(grammar)).listen(pcm);
    return { candidates, free, shape, goesOn };
  };
  const hearAll = async (pcm: Float32Array, graph: GrammarState | "called"): Promise<readonly HearingOutput[]> => {
    const outputs: HearingOutput[] = [];
    const hearing = createHearing({
      vad: newVoice(),
      listen: (utterance) => listen(utterance, graph),
      emit: (output) => void outputs.push(output),
      onBroken: (detail) => {
        throw new Error(detail);
      },
    });
    for (let at = 0; at < pcm.length; at += BLOCK_SAMPLES)
      hearing.push(pcm.subarray(at, at + BLOCK_SAMPLES), (1000 * Math.min(at + BLOCK_SAMPLES, pcm.length)) / RATE_HZ);
    await hearing.idle();
    return outputs;
  };
  return {
    context: context.value,
    models,
    searches,
    hearOpen: async (pcm, state) =>
      (await hearAll(pcm, state)).flatMap((output) => (output.kind === "heard" ? [output.heard] : [])),
    hearAll,
    hearHeld: async (pcm, grammar) => listen(await frameSpeech(pcm, newVoice()), grammar),
  };
}
