import { sayLevel } from "../../../language/sentences/talk.ts";
import type { TalkIntent } from "../../../language/talkIntent.ts";
import type { CaseState } from "../../../log/caseState.ts";
import type { AppContext } from "../../context.ts";
import { pauseAlerts, resumeAlerts } from "../alertPause.ts";
import { answered, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";
import { acknowledge } from "./acknowledge.ts";
import { stepVoice } from "./voiceSteps.ts";

/** What follows from what was said to the voice itself. */
export function decideTalk(
  { protocol }: AppContext,
  log: CaseState,
  intent: TalkIntent,
  source: Source,
  nowMs: number,
): Decision {
  switch (intent.kind) {
    case "acknowledge":
      return acknowledge(log, protocol, intent.about, source, nowMs);
    case "pauseAlerts":
      return pauseAlerts(protocol, intent.minutes, source, nowMs);
    case "resumeAlerts":
      return resumeAlerts(log, source, nowMs);
    case "talkLevel": {
      const { level } = intent;
      const isNew = level !== log.talk.level;
      return answered(sayLevel(level), isNew ? [{ type: "talk.set", level, heard: source.heard }] : []);
    }
    case "voice":
      return stepVoice(log, intent.change, source);
    case "howOld":
      return { facts: [], outcome: "answered", reply: intent };
  }
}
