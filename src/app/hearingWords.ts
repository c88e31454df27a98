import type { RecogniserError, SpeakerError } from "./ports.ts";

/** What went wrong with hearing, and what the user can do; said aloud and shown. */
export function sayRecogniserError(error: RecogniserError): string {
  switch (error.kind) {
    case "microphone-refused":
      return "Microphone not allowed. Allow it in the browser, or type.";
    case "microphone-lost":
      return "Microphone lost. Check the plug, or type.";
    case "microphone-silent":
      return "Microphone is silent. Check the mute switch, or type.";
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
