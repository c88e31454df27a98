import { fail, ok, type Result } from "../../core/result.ts";
import type { SpeakerError } from "../../app/ports.ts";
import type { VoiceAsk, VoiceManner, VoiceReply, VoiceRequest } from "./voiceMessages.ts";
import type { Sound } from "./wav.ts";

/** The part of a worker that is used; tests hand in a fake. */
export type WorkerLike = Pick<Worker, "postMessage" | "terminate" | "onmessage" | "onerror" | "onmessageerror">;

export interface VoiceClient {
  /** Starts the worker and loads the voice, once; asked again after a failure, tries again. */
  load(): Promise<Result<void, SpeakerError>>;
  /** Loads first where that has not been done. A worker that dies is restarted and asked once more. */
  synthesise(text: string, manner: VoiceManner): Promise<Result<Sound, SpeakerError>>;
  dispose(): void;
}

/** 5 MB over a slow connection; from the service worker's cache it takes under a second. */
const LOAD_LIMIT_MS = 120_000;
/** A sentence takes about 0.1 s. */
const SYNTHESIS_LIMIT_MS = 4_000;

/** The voice worker behind two functions. Every call settles: a reply, a time limit, a crash or disposal. */
export function createVoiceClient(makeWorker: () => WorkerLike, wasmUrl: string): VoiceClient {
  let worker: WorkerLike | undefined;
  let loaded: Promise<Result<void, SpeakerError>> | undefined;
  let disposed = false;
  let nextId = 0;
  const waiting = new Map<number, (result: Result<Sound, SpeakerError>) => void>();

  const stop = (error: SpeakerError) => {
    worker?.terminate();
    worker = undefined;
    loaded = undefined;
    for (const settle of [...waiting.values()]) settle(fail(error));
  };

  const start = (): WorkerLike => {
    const fresh = makeWorker();
    fresh.onmessage = ({ data }: MessageEvent<VoiceReply>) => waiting.get(data.id)?.(data.result);
    fresh.onerror = (event) => stop({ kind: "worker-died", detail: event.message || "the worker's script failed" });
    fresh.onmessageerror = () => stop({ kind: "worker-died", detail: "unreadable message" });
    return fresh;
  };

  const ask = (message: VoiceAsk, limitMs: number) =>
    new Promise<Result<Sound, SpeakerError>>((resolve) => {
      const id = nextId++;
      const timer = setTimeout(() => stop({ kind: "timed-out", afterMs: limitMs }), limitMs);
      waiting.set(id, (result) => {
        clearTimeout(timer);
        waiting.delete(id);
        resolve(result);
      });
      try {
        worker ??= start();
        const request: VoiceRequest = { id, ...message };
        worker.postMessage(request);
      } catch (thrown) {
        stop({ kind: "worker-died", detail: String(thrown) });
      }
    });

  const load = (): Promise<Result<void, SpeakerError>> => {
    if (disposed) return Promise.resolve(fail({ kind: "disposed" }));
    if (loaded !== undefined) return loaded;
    const attempt = ask({ op: "load", wasmUrl }, LOAD_LIMIT_MS).then((result): Result<void, SpeakerError> => {
      if (result.ok) return ok(undefined);
      if (loaded === attempt) loaded = undefined;
      return result;
    });
    loaded = attempt;
    return attempt;
  };

  const tryOnce = async (spoken: VoiceAsk & { op: "synthesise" }): Promise<Result<Sound, SpeakerError>> => {
    const ready = await load();
    if (!ready.ok) return ready;
    return disposed ? fail({ kind: "disposed" }) : ask(spoken, SYNTHESIS_LIMIT_MS);
  };

  const synthesise = async (text: string, manner: VoiceManner): Promise<Result<Sound, SpeakerError>> => {
    const spoken = { op: "synthesise", text, manner } as const;
    const first = await tryOnce(spoken);
    return first.ok || first.error.kind !== "worker-died" ? first : tryOnce(spoken);
  };

  return {
    load,
    synthesise,
    dispose: () => {
      disposed = true;
      stop({ kind: "disposed" });
    },
  };
}
