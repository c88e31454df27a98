import type { Result } from "../../core/result.ts";
import type { SpeakerError } from "../../app/ports.ts";
import type { Sound } from "./wav.ts";

/** How a phrase is said: times the usual pace, and faster than that where it would last longer than a limit. */
export type VoiceManner = { readonly pace: number; readonly withinMs?: number };

/** What the page asks of the voice worker. A phrase is said as one, with the default voice. */
export type VoiceAsk =
  | { readonly op: "load"; readonly wasmUrl: string }
  | { readonly op: "synthesise"; readonly text: string; readonly manner: VoiceManner };

export type VoiceRequest = VoiceAsk & { readonly id: number };

/** A load answers with sound too: the discarded first sentence that warms the engine. */
export type VoiceReply = { readonly id: number; readonly result: Result<Sound, SpeakerError> };
