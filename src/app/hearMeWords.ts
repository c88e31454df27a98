import { showAge } from "../language/sentences/vital.ts";
import type { VoiceProfile, VoiceProfileError, VoiceVerdict } from "../listener/voiceProfile.ts";
import type { HearMeEffect, HearMeEnd } from "./hearMe.ts";
import type { ProfileStoreError } from "./ports.ts";

const VERDICTS: Readonly<Record<VoiceVerdict, string>> = {
  well: "Heard well.",
  doubtful: "Heard, but with doubt: expect more questions.",
  badly: "This voice is heard badly here: every value is asked back. Hold to talk, come closer, or type.",
};

const ENDS: Readonly<Record<HearMeEnd, string>> = {
  skipped: "Hear me stopped. Nothing kept.",
  interrupted: "Hear me stopped: the case comes first. Nothing kept.",
  silence: "Nothing heard. Hear me stopped, nothing kept.",
  unmeasured: "This recogniser cannot be measured. Choose the built-in one in the settings.",
};

const INTRODUCTION = "Hear me: five short lines. Repeat each one; nothing of it is recorded. Say stop to end.";

/** What is said of each step. Errors: none. Not for: the case. */
export function sayHearMe(effect: HearMeEffect): string {
  switch (effect.kind) {
    case "ask":
      return effect.isFirst ? `${INTRODUCTION} Say: ${effect.line}.` : `Say: ${effect.line}.`;
    case "askAgain":
      return effect.heard === ""
        ? `Not heard. Once more: ${effect.line}.`
        : `Heard ${effect.heard}. Once more: ${effect.line}.`;
    case "finished":
      return VERDICTS[effect.profile.verdict];
    case "ended":
      return ENDS[effect.why];
  }
}

export const ANSWER_FIRST = "Answer the question first.";
export const SAY_AGAIN = "Say again.";
/** Said right after the five lines, in the words of one of them: too easily a repeated line to be a value. */
export const WAS_A_LINE = "That was a line of hear me, not recorded. If it was meant, say it again.";
export const FORGOTTEN = "Voice forgotten.";

/** What could not be kept, erased or read back. */
export function sayProfileError(error: ProfileStoreError | VoiceProfileError): string {
  switch (error.kind) {
    case "unavailable":
      return "What was learnt of the voice could not be read: storage is not available.";
    case "write-failed":
      return "The device could not store this. It holds until the page is closed.";
    case "corrupt":
      return "What was stored of the voice is damaged and was ignored. Say hear me again.";
    case "other-version":
      return "What was stored of the voice is of another version and was ignored. Say hear me again.";
  }
}

const DAY_MS = 24 * 60 * 60_000;
const showDays = (ageMs: number): string =>
  ageMs < DAY_MS ? showAge(ageMs) : ageMs < 2 * DAY_MS ? "yesterday" : `${Math.floor(ageMs / DAY_MS)} days ago`;

const showDb = (db: number): string => `${db < -0.5 ? "−" : ""}${Math.abs(Math.round(db))} dB`;

/** The profile for the settings: verdict, when, and the levels, which are relative to the loudest the microphone can give. */
export function showProfile({ madeAtMs, speechDb, noiseDb, verdict }: VoiceProfile, nowMs: number): string {
  const age = showDays(Math.max(0, nowMs - madeAtMs));
  return `${VERDICTS[verdict]} Measured ${age}: speech ${showDb(speechDb)}, room ${showDb(noiseDb)}.`;
}
