import type { DeviceFault } from "../rules/alerts/condition.ts";
import { sayRecogniserError } from "./hearingWords.ts";
import type { RecogniserError, StoreError } from "./ports.ts";

/** A failed write, in words: what is wrong and what to do. */
export function sayStoreError(error: StoreError): string {
  switch (error.kind) {
    case "unavailable":
      return "Record not saved: storage is not available. Write it down.";
    case "quota-exceeded":
      return "Record not saved: storage is full. Write it down.";
    case "write-failed":
      return "Record not saved. Write it down.";
    case "case-exists":
      return "This case is on this device already.";
    case "other-tab":
      return "Another tab keeps the record. This one shows how it stood, until that one is closed.";
    case "corrupt":
      return "Part of the record could not be read. Check it against your notes.";
  }
}

/** Nobody is heard. A faint voice is heard of, and listening that was given up was given up on purpose. */
export function microphoneFault(error: RecogniserError, sinceMs: number): DeviceFault | undefined {
  if (error.kind === "voice-faint" || error.kind === "disposed") return undefined;
  return { kind: "microphoneLost", sinceMs, text: sayRecogniserError(error) };
}
