import type { Recogniser } from "../../app/ports.ts";
import captureUrl from "./captureWorklet.ts?worker&url";
import type { ListenerLanguage } from "./listenerMessages.ts";
import { openMicrophone } from "./microphone.ts";
import { createWorkerRecogniser } from "./workerRecogniser.ts";

/**
 * Engine 1 in a browser: the listener in its worker, with the files that the build puts beside the page.
 *
 * @param baseUrl  folder of the built site, absolute: its `ort/`, `vad/` and `listener/` hold the files to fetch.
 * @param language grammars and dictionary as text; `case.jsgf` with `<open>` and `<asked>` among them.
 * Loading starts at once; `start` asks for the microphone. Errors and time limits: see `createWorkerRecogniser`.
 */
export function createBrowserRecogniser(baseUrl: string, language: ListenerLanguage): Recogniser {
  const at = (path: string): string => new URL(path, baseUrl).href;
  return createWorkerRecogniser({
    makeWorker: () => new Worker(new URL("./listenerWorker.ts", import.meta.url), { type: "module", name: "listener" }),
    openMicrophone: (onLost) => openMicrophone(captureUrl, onLost),
    assets: {
      runtime: at("ort/ort-wasm-simd-threaded.wasm"),
      network: at("listener/listener.onnx"),
      vad: at("vad/silero_vad_v6.onnx"),
    },
    language,
  });
}
