import type { CareIntent } from "./careIntent.ts";

/**
 * What a mistake in hearing it would cost. affirmed: it is read back and counts only once it is affirmed, so that a doubt
 * about the sound adds nothing. recorded: it counts at once. said: it only makes the app speak.
 */
export type AtStake = "affirmed" | "recorded" | "said";

export function atStake(intent: CareIntent): AtStake {
  switch (intent.kind) {
    case "given":
    case "infusion":
    case "strength":
    case "amount":
    case "rate":
    case "doseUnit":
    case "fluid":
    case "rescue":
    case "newCase":
    case "eraseCase":
    case "strike":
      return "affirmed";
    case "cylinder":
    case "airway":
    case "phase":
    case "clock":
    case "waive":
    case "step":
    // An alert that is held back unheard is no small thing.
    case "acknowledge":
    case "pauseAlerts":
    case "talkLevel":
      return "recorded";
    case "howMuch":
    case "make":
    case "total":
    case "equivalents":
    case "list":
    case "tell":
    case "help":
    case "resumeAlerts":
    case "voice":
    case "howOld":
    case "whichCase":
    case "handover":
      return "said";
  }
}
