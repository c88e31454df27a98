import type { DeviceFault } from "../rules/alerts/condition.ts";
import { FIRST_EARS, isListeningFor, type Ears } from "./ears.ts";
import { HEAR_ME_SILENT, type HearMeTalk } from "./hearMeDialogue.ts";
import type { ListeningMode, Mark } from "./ports.ts";
import type { ProtocolNotice } from "./protocolFile.ts";
import type { HearingStatus, ShownOutcome } from "./screenView.ts";

/** What the page shows beside the case itself. */
export type TalkState = {
  readonly hearing: HearingStatus;
  readonly hearingText: string;
  readonly mode: ListeningMode;
  /** In called listening: words count now without the call word. */
  readonly attentive: boolean;
  /** Held listening is taking an utterance. */
  readonly holding: boolean;
  readonly tooLoud: boolean;
  readonly lastHeard: { readonly words: string; readonly outcome: ShownOutcome } | undefined;
  readonly lastSpoken: string | undefined;
  readonly voiceText: string;
  /** What is wrong with the device now: alerts that no fact of the case tells. */
  readonly faults: readonly DeviceFault[];
  readonly saveText: string;
  readonly saveFailed: boolean;
  /** What must be known of the place where the record is kept; empty where all is well. */
  readonly roomText: string;
  /** What came of the last choice of a protocol file. */
  readonly protocolNotice: ProtocolNotice | undefined;
  readonly hearMe: HearMeTalk;
};

const MARKS: Readonly<Record<ShownOutcome, Mark | undefined>> = {
  recorded: "heard",
  answered: "heard",
  asked: "asked",
  refused: "refused",
  ignored: undefined,
  // The alert says it, and no soft sound may say otherwise.
  "not saved": undefined,
};

/** The soft sound that tells what came of an utterance, before any words. */
export const markFor = (outcome: ShownOutcome): Mark | undefined => MARKS[outcome];

/** The part of it that the ears know. */
export const showEars = (ears: Ears, nowMs: number) => ({
  mode: ears.mode,
  attentive: ears.mode === "called" && isListeningFor(ears, nowMs),
  holding: ears.holding,
  tooLoud: ears.loudness.tooLoud,
});

/** Another case was opened: nothing that was heard or said before is shown. */
export const NOTHING_YET = { lastHeard: undefined, lastSpoken: undefined, saveText: "Case opened" };

export const FIRST_TALK: TalkState = {
  hearing: "loading",
  hearingText: "Loading",
  ...showEars(FIRST_EARS, 0),
  lastHeard: undefined,
  lastSpoken: undefined,
  voiceText: "",
  faults: [],
  saveText: "No entry yet",
  saveFailed: false,
  roomText: "",
  protocolNotice: undefined,
  hearMe: HEAR_ME_SILENT,
};
