import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { join } from "node:path";
import * as ort from "onnxruntime-web/wasm";
import { createListenerHost } from "../../src/adapters/speech/listenerHost.ts";
import { loadListener } from "../../src/adapters/speech/loadListener.ts";
import type { FromListener } from "../../src/adapters/speech/listenerMessages.ts";
import type { GrammarState, Utterance } from "../../src/app/ports.ts";
import { readDictionary, readGrammarSources } from "../../src/cli/readGrammars.ts";

const ROOT = join(import.meta.dirname, "../..");
const BLOCK_SAMPLES = 1024;
const { resolve } = createRequire(join(ROOT, "package.json"));

export type NodeHearing = (pcm: Float32Array, rateHz: number, state: GrammarState) => Promise<Utterance>;

/** The listener of the page, carried by Node: for each sound the one utterance that is found in it. */
export async function openNodeHearing(): Promise<NodeHearing> {
  ort.env.wasm.numThreads = 1;
  ort.env.wasm.wasmBinary = new Uint8Array(
    await readFile(resolve("onnxruntime-web/ort-wasm-simd-threaded.wasm")),
  ).buffer;
  let onMessage: (message: FromListener) => void = () => undefined;
  const next = <T>(pick: (message: FromListener) => T | undefined): Promise<T> =>
    new Promise((done, reject) => {
      onMessage = (message) => {
        if (message.op === "failed") reject(new Error(JSON.stringify(message.error)));
        const picked = pick(message);
        if (picked !== undefined) done(picked);
      };
    });
  const tell = createListenerHost({
    load: (assets, language) => loadListener({ ort, readBytes: (path) => readFile(path), assets, language }),
    post: (message) => onMessage(message),
    nowMs: () => Date.now(),
  });
  const ready = next((message) => (message.op === "ready" ? true : undefined));
  tell({
    op: "load",
    assets: {
      runtime: "",
      network: join(ROOT, "public/listener/listener.onnx"),
      vad: resolve("@ricky0123/vad-web/dist/silero_vad_v6.onnx"),
    },
    language: { sources: readGrammarSources(), dictionaryText: readDictionary() },
  });
  await ready;
  return async (pcm, rateHz, state) => {
    tell({ op: "grammar", state });
    const { port1, port2 } = new MessageChannel();
    const heard = next((message) =>
      message.op === "event" && message.event.kind === "heard" ? message.event.utterance : undefined,
    );
    tell({ op: "sound", port: port2, rateHz });
    for (let at = 0; at < pcm.length; at += BLOCK_SAMPLES) port1.postMessage(pcm.slice(at, at + BLOCK_SAMPLES));
    const utterance = await heard;
    port1.close();
    return utterance;
  };
}
