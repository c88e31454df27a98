import type * as Ort from "onnxruntime-web/wasm";
import type { RecogniserError } from "../../app/ports.ts";
import { fail, ok, type Result } from "../../core/result.ts";
import { parseDictionary } from "../../listener/dictionary.ts";
import { createListener, type Listener } from "../../listener/listen.ts";
import type { Search } from "../../listener/search.ts";
import { createGrammarSearches, grammarErrorText } from "./grammarSearch.ts";
import type { GraphName, LoadedListener } from "./listenerHost.ts";
import type { ListenerAssets, ListenerLanguage } from "./listenerMessages.ts";
import { createAcoustic, createVoiceActivity } from "./onnxModels.ts";

/** Compiled before listening begins; any other when it is first wanted, so that nobody waits for what few use. */
const AT_START: readonly GraphName[] = ["open", "asked"];
const WARM_UP_SAMPLES = 16_000;

export type LoadParts = {
  /** The runtime, its WASM file already named. */
  readonly ort: typeof Ort;
  readonly readBytes: (address: string) => Promise<Uint8Array>;
  readonly assets: ListenerAssets;
  readonly language: ListenerLanguage;
};

class AssetError extends Error {
  readonly asset: string;
  constructor(asset: string, cause: unknown) {
    super(cause instanceof Error ? cause.message : String(cause));
    this.asset = asset;
  }
}

/**
 * Brings everything that listening needs into memory and runs it once, so that the first real utterance is as quick
 * as the others. Errors: `load-failed` naming the file, also for a grammar or dictionary that does not compile.
 */
export async function loadListener(parts: LoadParts): Promise<Result<LoadedListener, RecogniserError>> {
  try {
    return ok(await load(parts));
  } catch (error) {
    const asset = error instanceof AssetError ? error.asset : parts.assets.runtime;
    return fail({ kind: "load-failed", asset, detail: error instanceof Error ? error.message : String(error) });
  }
}

async function load({ ort, readBytes, assets, language }: LoadParts): Promise<LoadedListener> {
  const fetched = (asset: string) =>
    readBytes(asset).catch((cause: unknown) => Promise.reject(new AssetError(asset, cause)));
  const networkBytes = fetched(assets.network);
  networkBytes.catch(() => undefined); // awaited below; an earlier failure must not count as unhandled
  const vadBytes = await fetched(assets.vad);
  const vad = await createVoiceActivity(ort, vadBytes);
  const searchesFor = searchMaker(language);
  const searches = searchesFor(AT_START);
  const network = await networkBytes;
  const acoustic = await createAcoustic(ort, network).catch((cause: unknown) =>
    Promise.reject(new AssetError(assets.network, cause)),
  );
  const listeners = new Map<GraphName, Listener>();
  const keep = (graph: GraphName, search: Search): Listener => {
    const listener = createListener({ acoustic, search });
    listeners.set(graph, listener);
    return listener;
  };
  AT_START.forEach((graph, i) => keep(graph, searches[i]!));
  const listenerFor = (graph: GraphName): Listener => listeners.get(graph) ?? keep(graph, searchesFor([graph])[0]!);

  const listen = async (graph: GraphName, pcm: Float32Array) => {
    const { candidates, free, shape, goesOn } = await listenerFor(graph).listen(pcm);
    return { candidates, free, shape, goesOn };
  };
  for (const graph of AT_START) await listen(graph, new Float32Array(WARM_UP_SAMPLES));
  await vad.judge(new Float32Array(512));
  vad.reset();
  return { vad, listen, prepare: (graph) => void listenerFor(graph) };
}

/**
 * Compiles a few grammars a call, those that share much in little more than the time of one. Throws where the dictionary
 * or a grammar is wrong.
 */
function searchMaker({ sources, dictionaryText }: ListenerLanguage) {
  const dictionary = parseDictionary(dictionaryText);
  if (!dictionary.ok) throw new AssetError("words.dict", `line ${dictionary.error.line}: ${dictionary.error.message}`);
  return (rules: readonly GraphName[]) => {
    const searches = createGrammarSearches(sources, { grammar: "case", rules }, dictionary.value);
    if (!searches.ok) throw new AssetError("case.jsgf", grammarErrorText(searches.error));
    return searches.value;
  };
}
