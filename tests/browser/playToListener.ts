import type { FromListener, ToListener } from "../../src/adapters/speech/listenerMessages.ts";

declare global {
  interface Window {
    /** The best words of every utterance that the page's listener reported, in order. */
    heardByPage: string[];
    /** The page's own voice sounds. */
    pageSpeaks: boolean;
    /** Plays sound to the page's listener in place of the microphone; faint hiss follows. Base64 of 32-bit floats. */
    playToListener(bytes: string, rateHz: number): void;
  }
}

/**
 * Runs in the page before its own scripts. The built page hears what the test plays: its worker is given a port of the
 * test's in place of the microphone's, so that it works on exactly the samples that the test knows. Each sound is a new
 * source, which the listener hears afresh.
 */
export function listenToTest(): void {
  const BLOCK_SAMPLES = 1024;
  const HISS_EVERY_MS = 100;
  const Original = Worker;
  let listener: Worker | undefined;
  let port: MessagePort | undefined;
  window.heardByPage = [];
  window.pageSpeaks = false;

  const sendPlainly = (worker: Worker, message: ToListener, transfer: Transferable[]): void =>
    Reflect.apply(Original.prototype.postMessage, worker, [message, transfer]) as void;
  const connect = (worker: Worker, rateHz: number): MessagePort => {
    const { port1, port2 } = new MessageChannel();
    sendPlainly(worker, { op: "sound", port: port2, rateHz }, [port2]);
    return (port = port1);
  };
  const adopt = (worker: Worker): void => {
    listener = worker;
    worker.addEventListener("message", ({ data }: MessageEvent<FromListener>) => {
      if (data.op === "event" && data.event.kind === "heard")
        window.heardByPage.push(data.event.utterance.candidates[0]?.words ?? "");
    });
  };
  window.Worker = class extends Original {
    override postMessage(message: ToListener, options?: StructuredSerializeOptions | Transferable[]): void {
      // The voice's worker is told to load too, but no language.
      if (message.op === "load" && "language" in message) adopt(this);
      if (message.op === "speaking") window.pageSpeaks = message.speaking;
      if (message.op === "sound") connect(this, message.rateHz);
      else super.postMessage(message, options as StructuredSerializeOptions);
    }
  };
  // A microphone is never quite silent, and never stops.
  setInterval(() => {
    port?.postMessage(Float32Array.from({ length: 4_800 }, (_, i) => ((i * 7919) % 17) * 1e-5));
  }, HISS_EVERY_MS);
  window.playToListener = (bytes, rateHz) => {
    if (listener === undefined) throw new Error("the page has no listener");
    const pcm = new Float32Array(Uint8Array.from(atob(bytes), (c) => c.charCodeAt(0)).buffer);
    const to = connect(listener, rateHz);
    for (let at = 0; at < pcm.length; at += BLOCK_SAMPLES) to.postMessage(pcm.slice(at, at + BLOCK_SAMPLES));
  };
}
