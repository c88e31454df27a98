import type { Result } from "../../core/result.ts";
import type { SpeakerError } from "../../app/ports.ts";
import type { Sound } from "./wav.ts";

/** What the page asks of the voice worker. A phrase is said as one, with the default voice. */
export type VoiceAsk =
  | { readonly op: "load"; readonly wasmUrl: string }
  | { readonly op: "synthesise"; readonly text: string; readonly withinMs?: number };

export type VoiceRequest = VoiceAsk & { readonly id: number };

/** A load answers with sound too: the discarded first sentence that warms the engine. */
export type VoiceReply = { readonly id: number; readonly result: Result<Sound, SpeakerError> };
