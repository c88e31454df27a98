import type * as Ort from "onnxruntime-web/wasm";
import type { GrammarState, RecogniserError } from "../../app/ports.ts";
import { fail, ok, type Result } from "../../core/result.ts";
import { parseDictionary } from "../../listener/dictionary.ts";
import { createListener, type Listener } from "../../listener/listen.ts";
import type { Search } from "../../listener/search.ts";
import { createGrammarSearch, grammarErrorText } from "./grammarSearch.ts";
import type { LoadedListener } from "./listenerHost.ts";
import type { ListenerAssets, ListenerLanguage } from "./listenerMessages.ts";
import { createAcoustic, createVoiceActivity } from "./onnxModels.ts";

const STATES: readonly GrammarState[] = ["open", "asked"];
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
  const searches = compileStates(language);
  const network = await networkBytes;
  const acoustic = await createAcoustic(ort, network).catch((cause: unknown) =>
    Promise.reject(new AssetError(assets.network, cause)),
  );
  const listeners = new Map<GrammarState, Listener>();
  for (const [state, search] of searches) listeners.set(state, createListener({ acoustic, search }));

  const listen = async (state: GrammarState, pcm: Float32Array) => {
    const listener = listeners.get(state);
    if (listener === undefined) throw new Error(`no grammar for the state ${state}`);
    const { candidates, free, shape } = await listener.listen(pcm);
    return { candidates, free, shape };
  };
  for (const state of STATES) await listen(state, new Float32Array(WARM_UP_SAMPLES));
  await vad.judge(new Float32Array(512));
  vad.reset();
  return { vad, listen };
}

function compileStates({ sources, dictionaryText }: ListenerLanguage): ReadonlyMap<GrammarState, Search> {
  const dictionary = parseDictionary(dictionaryText);
  if (!dictionary.ok) throw new AssetError("words.dict", `line ${dictionary.error.line}: ${dictionary.error.message}`);
  const searches = new Map<GrammarState, Search>();
  for (const state of STATES) {
    const search = createGrammarSearch(sources, { grammar: "case", rule: state }, dictionary.value);
    if (!search.ok) throw new AssetError("case.jsgf", grammarErrorText(search.error));
    searches.set(state, search.value);
  }
  return searches;
}
