import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { join } from "node:path";
import * as ort from "onnxruntime-web/wasm";
import { createListener, type Acoustic, type Listener } from "../../listener/listen.ts";
import type { Search } from "../../listener/search.ts";
import type { FrameJudge } from "../../listener/vadTrim.ts";
import { createAcoustic, createVoiceActivity } from "./onnxModels.ts";

/** Which of the package's models hears voices; `vad/` of the built site holds the same file. */
export const VAD_MODEL = "@ricky0123/vad-web/dist/silero_vad_v6.onnx";
const RUNTIME = "onnxruntime-web/ort-wasm-simd-threaded.wasm";

/** The same networks as in the browser, for the terminal and for tests. */
export type NodeModels = {
  readonly vad: FrameJudge;
  readonly acoustic: Acoustic;
  readonly listenerFor: (search: Search) => Listener;
};

/**
 * Loads the listener's networks from the project's own files and packages.
 *
 * @param root the project's folder. Rejects when a file is missing or is no network.
 */
export async function loadNodeModels(root: string): Promise<NodeModels> {
  const resolve = createRequire(join(root, "package.json")).resolve;
  ort.env.wasm.numThreads = 1;
  ort.env.wasm.wasmBinary = bufferOf(await readFile(resolve(RUNTIME)));
  const vad = await createVoiceActivity(ort, await readFile(resolve(VAD_MODEL)));
  const acoustic = await createAcoustic(ort, await readFile(join(root, "public/listener/listener.onnx")));
  return { vad, acoustic, listenerFor: (search) => createListener({ acoustic, search }) };
}

const bufferOf = (bytes: Uint8Array): ArrayBuffer => new Uint8Array(bytes).buffer;
