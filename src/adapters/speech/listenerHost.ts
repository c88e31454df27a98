import type { GrammarState, ListeningMode, RecogniserError } from "../../app/ports.ts";
import { createHearing, type Hearing, type HearingOutput, type ListenedSound } from "../../listener/hearing.ts";
import { createResampler } from "../../listener/resample.ts";
import type { FrameJudge } from "../../listener/vadTrim.ts";
import type { Result } from "../../core/result.ts";
import type { FromListener, ListenerAssets, ListenerLanguage, ToListener } from "./listenerMessages.ts";

const LISTENER_RATE_HZ = 16_000;

/** Public rules of `case.jsgf`. In called listening one of them serves every state: it must hear the call word in all. */
export type GraphName = GrammarState | "called";

/** What a loaded listener can do: judge frames, and listen with one of its grammars. */
export type LoadedListener = {
  readonly vad: FrameJudge;
  /** Makes a grammar ready that is compiled only when it is wanted, before its first utterance. Throws when it is wrong. */
  readonly prepare: (graph: GraphName) => void;
  readonly listen: (graph: GraphName, pcm: Float32Array) => Promise<ListenedSound>;
};

export type ListenerHostParts = {
  readonly load: (
    assets: ListenerAssets,
    language: ListenerLanguage,
  ) => Promise<Result<LoadedListener, RecogniserError>>;
  readonly post: (message: FromListener) => void;
  /** Unix ms. */
  readonly nowMs: () => number;
};

/**
 * What goes on inside the worker, apart from being one: takes messages, answers with messages.
 * Each new source of sound is heard afresh: half an utterance of the last one must not become the start of another.
 * Errors: told once, as `failed`.
 */
export function createListenerHost({ load, post, nowMs }: ListenerHostParts): (message: ToListener) => void {
  let listener: LoadedListener | undefined;
  let grammar: GrammarState = "open";
  let mode: ListeningMode = "open";
  let speaking = false;
  let hearing: Hearing | undefined;
  let port: MessagePort | undefined;

  const fail = (detail: string): void => post({ op: "failed", error: { kind: "worker-died", detail } });
  const graph = (): GraphName => (mode === "called" ? "called" : grammar);

  const start = async (assets: ListenerAssets, language: ListenerLanguage): Promise<void> => {
    const loaded = await load(assets, language);
    if (!loaded.ok) return post({ op: "failed", error: loaded.error });
    listener = loaded.value;
    listener.prepare(graph());
    post({ op: "ready" });
  };

  const hear = (from: MessagePort, rateHz: number): void => {
    port?.close();
    hearing?.close();
    port = from;
    if (listener === undefined) return fail("sound came before the listener was loaded");
    const { vad, listen } = listener;
    vad.reset();
    const fresh = createHearing({
      vad,
      listen: (pcm) => listen(graph(), pcm),
      emit: (output) => post(messageOf(output)),
      onBroken: fail,
    });
    fresh.setMode(segmenting(mode));
    fresh.setSpeaking(speaking);
    hearing = fresh;
    const resampler = createResampler(rateHz, LISTENER_RATE_HZ);
    from.onmessage = ({ data }: MessageEvent<Float32Array>) => fresh.push(resampler.push(data), nowMs());
  };

  return (message) => {
    switch (message.op) {
      case "load":
        start(message.assets, message.language).catch((error: unknown) => fail(String(error)));
        return;
      case "sound":
        return hear(message.port, message.rateHz);
      case "grammar":
        grammar = message.state;
        return;
      case "mode":
        mode = message.mode;
        hearing?.setMode(segmenting(mode));
        try {
          return listener?.prepare(graph());
        } catch (error) {
          return fail(String(error));
        }
      case "hold":
        return hearing?.hold(message.down);
      case "speaking":
        speaking = message.speaking;
        return hearing?.setSpeaking(speaking);
      case "ping":
        return post({ op: "pong" });
    }
  };
}

/** How utterances are cut out of the sound: whoever must call first is heard openly. */
const segmenting = (mode: ListeningMode): "open" | "held" => (mode === "held" ? "held" : "open");

function messageOf(output: HearingOutput): FromListener {
  switch (output.kind) {
    case "silentMicrophone":
      return { op: "microphone", silentForMs: output.forMs };
    case "soundAgain":
      return { op: "microphone", silentForMs: undefined };
    case "heard": {
      const { heard, endedAtMs } = output;
      return { op: "event", event: { kind: "heard", utterance: { by: "listener", ...heard, endedAtMs } } };
    }
    default:
      return { op: "event", event: output };
  }
}
