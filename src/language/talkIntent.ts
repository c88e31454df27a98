import type { AlertCause } from "../rules/alerts/cause.ts";
import type { TalkLevel } from "../log/talkFacts.ts";
import type { SaidNumber } from "./saidNumber.ts";

/** One step of the voice; "usual" goes back to the start of both. */
export type VoiceChange = "louder" | "quieter" | "faster" | "slower" | "usual";

/** The number whose age is asked for: the one said last, or one by name. */
export type HowOldAbout =
  "last" | "pressure" | "map" | "cpp" | "spo2" | "hr" | "rr" | "etco2" | "icp" | "temp" | "glucose";

/** What is said to the voice itself: about its alerts, its manner, and the age of its numbers. */
export type TalkIntent =
  /** The alert said last, or all of one cause: somebody has it. */
  | { readonly kind: "acknowledge"; readonly about: "last" | AlertCause }
  /** Without minutes: as long as the protocol stands by. */
  | { readonly kind: "pauseAlerts"; readonly minutes?: SaidNumber }
  | { readonly kind: "resumeAlerts" }
  | { readonly kind: "talkLevel"; readonly level: TalkLevel }
  | { readonly kind: "voice"; readonly change: VoiceChange }
  | { readonly kind: "howOld"; readonly about: HowOldAbout };
