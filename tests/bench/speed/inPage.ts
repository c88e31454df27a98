import * as ort from "onnxruntime-web/wasm";
import { createAcoustic } from "../../../src/adapters/speech/onnxModels.ts";
import { createGrammarSearch } from "../../../src/adapters/speech/grammarSearch.ts";
import { parseDictionary } from "../../../src/listener/dictionary.ts";
import type { Search } from "../../../src/listener/search.ts";
import { timeStages, type StageTimes } from "./stages.ts";

export type PageTask = {
  readonly threads: number;
  readonly sources: Readonly<Record<string, string>>;
  readonly dictionaryText: string;
  readonly entries: readonly (readonly [name: string, grammar: string, rule: string])[];
  /** Base64 of 32-bit floats, 16 kHz. */
  readonly sounds: readonly string[];
};

/** Runs in a browser: the same stages as under Node, on the page's own thread. */
export async function timeInPage(task: PageTask): Promise<readonly StageTimes[]> {
  ort.env.wasm.numThreads = task.threads;
  ort.env.wasm.wasmPaths = { wasm: "/ort/ort-wasm-simd-threaded.wasm" };
  const network = await fetch("/listener/listener.onnx");
  const acoustic = await createAcoustic(ort, new Uint8Array(await network.arrayBuffer()));
  const dictionary = parseDictionary(task.dictionaryText);
  if (!dictionary.ok) throw new Error(dictionary.error.message);
  const searches: Record<string, Search> = {};
  for (const [name, grammar, rule] of task.entries) {
    const search = createGrammarSearch(task.sources, { grammar, rule }, dictionary.value);
    if (!search.ok) throw new Error(search.error.message);
    searches[name] = search.value;
  }
  const sounds = task.sounds.map(
    (text) => new Float32Array(Uint8Array.from(atob(text), (c) => c.charCodeAt(0)).buffer),
  );
  return timeStages(sounds, acoustic, searches);
}
