import type { Priority } from "../protocol/priority.ts";

/** How much is said unasked and in reply. `alerts`: alerts, questions and what was asked for, nothing else. */
export type TalkLevel = "full" | "brief" | "alerts";

/** The voice in steps from usual: slower and quieter below 0, faster and louder above. */
export type VoiceSteps = { readonly pace: number; readonly volume: number };
export const STEPS_EACH_WAY = 2;

/** What was said about the talking itself, and what the voice has said. */
export type TalkFact =
  /** "Heard": this alert, or this occurrence of a prompt (`key`), needs no reminder until it is worse or comes anew. */
  | { readonly type: "alert.acknowledged"; readonly alertId: string; readonly key?: string; readonly heard: string }
  /** Nothing under a high priority is said until then; ended by a time in the past. */
  | { readonly type: "alerts.paused"; readonly untilMs: number; readonly heard: string }
  | { readonly type: "talk.set"; readonly level: TalkLevel; readonly heard: string }
  | ({ readonly type: "voice.set"; readonly heard: string } & VoiceSteps)
  /** These words began to sound. `alertId` where they are an alert or a prompt. */
  | {
      readonly type: "speech.started";
      readonly text: string;
      readonly priority: Priority | "none";
      readonly alertId?: string;
    }
  /** They were cut off, by the user or by something more urgent, so the end of them was not heard. */
  | { readonly type: "speech.cut"; readonly startedId: string };
