import { fileURLToPath } from "node:url";
import { createGrammarSearch, grammarErrorText } from "../../src/adapters/speech/grammarSearch.ts";
import { loadNodeModels, type NodeModels } from "../../src/adapters/speech/nodeListener.ts";
import type { AppContext } from "../../src/app/context.ts";
import type { GrammarState } from "../../src/app/ports.ts";
import { loadContext } from "../../src/cli/loadContext.ts";
import { readDictionary, readGrammarSources } from "../../src/cli/readGrammars.ts";
import { parseDictionary } from "../../src/listener/dictionary.ts";
import { createHearing, type HeardSound } from "../../src/listener/hearing.ts";
import type { Search } from "../../src/listener/search.ts";
import { frameSpeech } from "../../src/listener/vadTrim.ts";

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
  /** As in held listening: all of it is one utterance. */
  hearHeld(pcm: Float32Array, grammar: GrammarName): Promise<HeardSound>;
};

export function searchFor(grammar: string, rule: string): Search {
  const dictionary = parseDictionary(readDictionary());
  if (!dictionary.ok) throw new Error(`words.dict:${dictionary.error.line}: ${dictionary.error.message}`);
  const search = createGrammarSearch(readGrammarSources(), { grammar, rule }, dictionary.value);
  if (!search.ok) throw new Error(grammarErrorText(search.error));
  return search.value;
}

export async function openLab(): Promise<Lab> {
  const context = await loadContext({});
  if (!context.ok) throw new Error(context.error);
  const models = await loadNodeModels(ROOT);
  const searches = {
    open: searchFor("case", "open"),
    asked: searchFor("case", "asked"),
    numbers: searchFor("numbers", "number"),
  };
  const listen = async (pcm: Float32Array, grammar: GrammarName): Promise<HeardSound> => {
    const { candidates, free, shape } = await models.listenerFor(searches[grammar]).listen(pcm);
    return { candidates, free, shape };
  };
  return {
    context: context.value,
    models,
    searches,
    async hearOpen(pcm, state) {
      const heard: HeardSound[] = [];
      models.vad.reset();
      const hearing = createHearing({
        vad: models.vad,
        listen: (utterance) => listen(utterance, state),
        emit: (output) => void (output.kind === "heard" && heard.push(output.heard)),
        onBroken: (detail) => {
          throw new Error(detail);
        },
      });
      for (let at = 0; at < pcm.length; at += BLOCK_SAMPLES)
        hearing.push(pcm.subarray(at, at + BLOCK_SAMPLES), (1000 * Math.min(at + BLOCK_SAMPLES, pcm.length)) / RATE_HZ);
      await hearing.idle();
      return heard;
    },
    hearHeld: async (pcm, grammar) => listen(await frameSpeech(pcm, models.vad), grammar),
  };
}
