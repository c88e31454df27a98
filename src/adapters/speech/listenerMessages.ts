import type { GrammarState, HearingEvent, ListeningMode, RecogniserError } from "../../app/ports.ts";

/** Addresses of what the listener fetches, absolute or relative to the page. */
export type ListenerAssets = {
  /** The WASM file of onnxruntime-web. */
  readonly runtime: string;
  readonly network: string;
  readonly vad: string;
};

/** What may be said: grammar texts by file name without ".jsgf", and the pronunciations of all their words. */
export type ListenerLanguage = {
  readonly sources: Readonly<Record<string, string>>;
  readonly dictionaryText: string;
};

/** Everything the listener's worker may be told. `load` comes first and once. */
export type ToListener =
  | { readonly op: "load"; readonly assets: ListenerAssets; readonly language: ListenerLanguage }
  /** Blocks of sound (Float32Array) at `rateHz` come through the port until another one takes its place. */
  | { readonly op: "sound"; readonly port: MessagePort; readonly rateHz: number }
  | { readonly op: "grammar"; readonly state: GrammarState }
  | { readonly op: "mode"; readonly mode: ListeningMode }
  | { readonly op: "hold"; readonly down: boolean }
  | { readonly op: "speaking"; readonly speaking: boolean }
  | { readonly op: "ping" };

/** Everything it answers. `failed` may come at any time; the worker is of no use afterwards. */
export type FromListener =
  | { readonly op: "ready" }
  | { readonly op: "failed"; readonly error: RecogniserError }
  | { readonly op: "event"; readonly event: HearingEvent }
  /** The microphone gives nothing (silent) or gives sound again; see the meter. */
  | { readonly op: "microphone"; readonly silentForMs: number | undefined }
  | { readonly op: "pong" };
