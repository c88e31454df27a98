import type { GrammarState, ListeningMode, RecogniserError } from "../../app/ports.ts";
import { createHearing, type Hearing, type HearingOutput, type HeardSound } from "../../listener/hearing.ts";
import { createResampler } from "../../listener/resample.ts";
import type { FrameJudge } from "../../listener/vadTrim.ts";
import type { Result } from "../../core/result.ts";
import type { FromListener, ListenerAssets, ListenerLanguage, ToListener } from "./listenerMessages.ts";

const LISTENER_RATE_HZ = 16_000;

/** What a loaded listener can do: judge frames, and listen with one of the two grammars. */
export type LoadedListener = {
  readonly vad: FrameJudge;
  readonly listen: (state: GrammarState, pcm: Float32Array) => Promise<HeardSound>;
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

  const start = async (assets: ListenerAssets, language: ListenerLanguage): Promise<void> => {
    const loaded = await load(assets, language);
    if (!loaded.ok) return post({ op: "failed", error: loaded.error });
    listener = loaded.value;
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
      listen: (pcm) => listen(grammar, pcm),
      emit: (output) => post(messageOf(output)),
      onBroken: fail,
    });
    fresh.setMode(mode);
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
        return hearing?.setMode(mode);
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
