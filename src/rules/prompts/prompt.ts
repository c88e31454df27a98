import type { Priority } from "../../protocol/priority.ts";
import type { LimitRange } from "../../protocol/resolveTargets.ts";

/** What a prompt says; the words are the language's. Lengths in ms. */
export type PromptBody =
  | { readonly promptId: "stopAttempt"; readonly spo2Pct: number }
  | { readonly promptId: "noCo2"; readonly sinceMs: number }
  | { readonly promptId: "attemptLimit"; readonly attempts: number }
  | { readonly promptId: "sedationDue"; readonly paralytic: string }
  /** The CO2 band that counts from now on. */
  | { readonly promptId: "rescueOver"; readonly etco2MmHg: LimitRange }
  | { readonly promptId: "hyperventilationOver" }
  | { readonly promptId: "osmoticOver"; readonly agent: string }
  | { readonly promptId: "bagLow"; readonly drug: string; readonly leftMs: number }
  | { readonly promptId: "cylinderLow"; readonly leftMs: number }
  | { readonly promptId: "pushDoseAgain"; readonly drug: string }
  | { readonly promptId: "pressureDue"; readonly ageMs: number | undefined }
  | { readonly promptId: "preoxygenated"; readonly forMs: number }
  | { readonly promptId: "apnoea"; readonly forMs: number }
  | { readonly promptId: "attempt"; readonly number: number; readonly forMs: number }
  | { readonly promptId: "neuroDue"; readonly pupilsOnly: boolean }
  | { readonly promptId: "fullSetDue" }
  | { readonly promptId: "stale"; readonly what: "pressure" | "spo2"; readonly ageMs: number }
  | { readonly promptId: "watchPhase"; readonly forMs: number };

/**
 * Something to be said unasked.
 *
 * `key` tells one occurrence from the next. `repeats`: it is said again by the clock of its priority until the facts have
 * answered it; otherwise once for each occurrence. `always`: also while standing by, and past the cap on
 * spoken alerts. `asks`: it puts a question, so that it
 * waits while another one does.
 */
export type Prompt = PromptBody & {
  readonly key: string;
  readonly priority: Priority;
  readonly repeats: boolean;
  readonly always?: true;
  readonly asks?: boolean;
  /** A time that is called while it runs: no alert. */
  readonly callOut?: true;
  /** A round that is due again and again: it gives way to everything that is news. */
  readonly routine?: true;
};
