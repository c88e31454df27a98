import type { RecogniserError } from "../../app/ports.ts";
import type { FromListener, ToListener } from "./listenerMessages.ts";

export type WorkerLike = Pick<Worker, "postMessage" | "terminate" | "onmessage" | "onerror" | "onmessageerror">;

export type LinkLimits = {
  /** From the first message to `ready`: a first visit fetches about 12 MB. */
  readonly loadTimeoutMs: number;
  /** Longest silence on a ping. Longer than the longest utterance takes to decode on a slow device. */
  readonly answerTimeoutMs: number;
  readonly pingEveryMs: number;
};

export type LinkParts = {
  readonly makeWorker: () => WorkerLike;
  readonly load: Extract<ToListener, { readonly op: "load" }>;
  readonly limits: LinkLimits;
  readonly onReady: () => void;
  readonly onMessage: (message: Extract<FromListener, { readonly op: "event" | "microphone" }>) => void;
  /** At most once; the worker is gone by then. */
  readonly onDead: (error: RecogniserError) => void;
};

export type ListenerLink = {
  isReady(): boolean;
  /** Ready, and no more than one ping behind. */
  isAnswering(): boolean;
  /** Goes nowhere once the worker is dead. */
  post(message: ToListener, transfer?: Transferable[]): void;
  close(): void;
};

/**
 * One worker from birth to death. Whatever happens, exactly one of three things comes of it: it becomes ready and stays
 * so, it is closed, or `onDead` says why it is of no use: a failed load, a crash, an unreadable message, or no answer.
 */
export function openListenerLink({ makeWorker, load, limits, onReady, onMessage, onDead }: LinkParts): ListenerLink {
  const worker = makeWorker();
  let phase: "loading" | "ready" | "closed" = "loading";
  let unansweredPings = 0;

  const close = (): void => {
    phase = "closed";
    clearTimeout(loading);
    clearInterval(pinging);
    worker.onmessage = worker.onerror = worker.onmessageerror = null;
    worker.terminate();
  };
  const die = (error: RecogniserError): void => {
    if (phase === "closed") return;
    close();
    onDead(error);
  };

  const loading = setTimeout(() => die({ kind: "timed-out", afterMs: limits.loadTimeoutMs }), limits.loadTimeoutMs);
  // Pings are counted, not timed: a page that slept for an hour has sent none meanwhile.
  const pinging = setInterval(() => {
    if (phase !== "ready") return;
    if (unansweredPings * limits.pingEveryMs >= limits.answerTimeoutMs)
      return die({ kind: "timed-out", afterMs: limits.answerTimeoutMs });
    unansweredPings++;
    worker.postMessage({ op: "ping" } satisfies ToListener);
  }, limits.pingEveryMs);

  worker.onmessage = ({ data }: MessageEvent<FromListener>) => {
    unansweredPings = 0;
    switch (data.op) {
      case "ready":
        clearTimeout(loading);
        phase = "ready";
        return onReady();
      case "failed":
        return die(data.error);
      case "event":
      case "microphone":
        return onMessage(data);
      case "pong":
        return;
    }
  };
  worker.onerror = (event) => die({ kind: "worker-died", detail: event.message || "the listener's program failed" });
  worker.onmessageerror = () => die({ kind: "worker-died", detail: "unreadable message" });
  worker.postMessage(load);

  return {
    isReady: () => phase === "ready",
    isAnswering: () => phase === "ready" && unansweredPings <= 1,
    post(message, transfer = []) {
      if (phase !== "closed") worker.postMessage(message, transfer);
    },
    close,
  };
}
