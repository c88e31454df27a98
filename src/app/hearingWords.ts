import type { ListeningMode, RecogniserError, SpeakerError } from "./ports.ts";

/** Said once when it begins, and shown as long as it lasts. */
export const TOO_LOUD = {
  text: "Too loud to hear safely. Move the microphone closer, hold to talk, or type.",
  priority: "low",
  alertId: "too-loud",
} as const;

export const HEARING_AGAIN = { text: "Hearing again.", priority: "none", alertId: TOO_LOUD.alertId } as const;

/** What the user must do to be heard, while all works. */
export function showListening(mode: ListeningMode, attentive: boolean): string {
  switch (mode) {
    case "open":
      return "Listening";
    case "held":
      return "Hold to talk";
    case "called":
      return attentive ? "Go ahead" : "Say “tragus” first";
  }
}

/** What went wrong with hearing, and what the user can do; said aloud and shown. */
export function sayRecogniserError(error: RecogniserError): string {
  switch (error.kind) {
    case "microphone-refused":
      return "Microphone not allowed. Allow it in the browser, or type.";
    case "microphone-lost":
      return "Microphone lost. Check the plug, or type.";
    case "microphone-silent":
      return "Microphone is silent. Check the mute switch, or type.";
    case "voice-faint":
      return "Your voice is too faint. Bring the microphone closer, or type.";
    case "not-supported":
      return "This browser cannot listen. Type instead.";
    case "load-failed":
      return `Listening could not start: ${error.asset} did not load. Type instead.`;
    case "timed-out":
    case "worker-died":
      return "Listening stopped and is starting again.";
    case "disposed":
      return "Listening is off.";
  }
}

/** Shown once when words can be heard again. */
export const VOICE_AGAIN = "Voice works again.";

/** What went wrong with speaking; shown, since it cannot be said. */
export function showSpeakerError(error: SpeakerError): string {
  switch (error.kind) {
    case "load-failed":
      return `Voice could not start: ${error.asset} did not load. Read the screen.`;
    case "audio-blocked":
      return "Sound is blocked until the page is touched once. Read the screen.";
    case "timed-out":
    case "worker-died":
    case "disposed":
      return "Voice stopped. Read the screen.";
  }
}
