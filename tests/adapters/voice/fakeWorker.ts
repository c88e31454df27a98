import { ok, type Result } from "../../../src/core/result.ts";
import type { SpeakerError } from "../../../src/app/ports.ts";
import type { WorkerLike } from "../../../src/adapters/voice/voiceClient.ts";
import type { VoiceRequest } from "../../../src/adapters/voice/voiceMessages.ts";
import type { Sound } from "../../../src/adapters/voice/wav.ts";

const RATE = 16_000;

/** Sound of a given length that says, in its every sample, how long its text was. */
const soundOf = (text: string, ms: number): Sound => ({
  pcm: new Float32Array((ms / 1000) * RATE).fill(text.length / 1000),
  sampleRate: RATE,
});

/** How a fake worker meets a request: an answer after some time, its death, or silence. */
export type Answer = { readonly afterMs: number; readonly result: Result<Sound, SpeakerError> } | "dies" | "silent";

export const PHRASE_MS = 600;
export const answerAtOnce = (request: VoiceRequest): Answer => ({
  afterMs: 0,
  result: ok(request.op === "load" ? soundOf("", 0) : soundOf(request.text, PHRASE_MS)),
});

/** Makes fake workers that all answer alike, and keeps what they were asked. */
export function fakeWorkers(answer: (request: VoiceRequest, worker: number) => Answer = answerAtOnce) {
  const asked: { worker: number; request: VoiceRequest }[] = [];
  let made = 0;
  let terminated = 0;
  const makeWorker = (): WorkerLike => {
    const worker = made++;
    let alive = true;
    const fake: WorkerLike = {
      onmessage: null,
      onerror: null,
      onmessageerror: null,
      terminate: () => {
        alive = false;
        terminated++;
      },
      postMessage: (request: VoiceRequest) => {
        asked.push({ worker, request });
        const met = answer(request, worker);
        if (met === "silent") return;
        const act = () => {
          if (!alive) return;
          if (met === "dies") fake.onerror?.call(null as never, { message: "out of memory" } as ErrorEvent);
          else fake.onmessage?.call(null as never, { data: { id: request.id, result: met.result } } as MessageEvent);
        };
        setTimeout(act, met === "dies" ? 0 : met.afterMs);
      },
    };
    return fake;
  };
  return {
    makeWorker,
    asked,
    get made() {
      return made;
    },
    get terminated() {
      return terminated;
    },
    get texts() {
      return asked.flatMap(({ request }) => (request.op === "synthesise" ? [request.text] : []));
    },
  };
}
