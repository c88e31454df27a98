import * as ort from "onnxruntime-web/wasm";
import { createListenerHost } from "./listenerHost.ts";
import type { FromListener, ToListener } from "./listenerMessages.ts";
import { loadListener } from "./loadListener.ts";

// The worker's own types would clash with the page's, and the compiler takes one set only.
const scope = globalThis as unknown as {
  postMessage(message: FromListener): void;
  onmessage: ((event: MessageEvent<ToListener>) => void) | null;
};

const receive = createListenerHost({
  load: (assets, language) => {
    // One thread needs no cross-origin isolation, so that any static host will do.
    ort.env.wasm.numThreads = 1;
    ort.env.wasm.wasmPaths = { wasm: assets.runtime };
    return loadListener({ ort, readBytes, assets, language });
  },
  post: (message) => scope.postMessage(message),
  nowMs: () => Date.now(),
});
scope.onmessage = ({ data }) => receive(data);

async function readBytes(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`${response.status} ${response.statusText}`);
  return new Uint8Array(await response.arrayBuffer());
}
