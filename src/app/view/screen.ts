import { sayWhichCase } from "../../language/sentences/caseRecord.ts";
import { sayProtocolStatus, showProtocolMark } from "../../language/sentences/protocol.ts";
import { examplePhrases } from "../../language/understand/examplePhrases.ts";
import { selectPerfusion } from "../../log/perfusion.ts";
import { viewAlerts } from "./alerts.ts";
import { grammarState, type AppContext, type AppState } from "../context.ts";
import { showHandover } from "../handover.ts";
import { showListening, TOO_LOUD } from "../hearingWords.ts";
import type { ScreenView } from "../screenView.ts";
import { viewSettings, type Settings } from "../settings.ts";
import type { TalkState } from "../talkState.ts";
import { viewCourse } from "./course.ts";
import { viewDrugs } from "./drugs.ts";
import { viewHearMe } from "./hearMe.ts";
import { viewList } from "./list.ts";
import { viewBar, viewHeadline } from "./perfusionBar.ts";
import { viewTalking } from "./talking.ts";
import { viewTargets } from "./targets.ts";
import { viewTiles } from "./tiles.ts";
import { viewWhy } from "./why.ts";

/** Everything the page shows, from the same selectors that the voice speaks from. */
export function viewScreen(
  { protocol, mark }: AppContext,
  { log, why, handover }: AppState,
  talk: TalkState,
  settings: Settings,
  nowMs: number,
): ScreenView {
  const perfusion = selectPerfusion(log, protocol, nowMs);
  const hearingText = talk.hearing === "listening" ? showListening(talk.mode, talk.attentive) : talk.hearingText;
  return {
    caseText: sayWhichCase(log),
    isRehearsal: log.isRehearsal,
    caution: protocol.caution,
    protocolText: showProtocolMark(protocol, mark),
    protocolWarning: sayProtocolStatus(protocol),
    protocolNotice: talk.protocolNotice,
    saveText: talk.saveText,
    roomText: talk.roomText,
    saveFailed: talk.saveFailed,
    hearing: {
      status: talk.hearing,
      text: [hearingText, talk.voiceText].filter((t) => t !== "").join(". "),
      mode: talk.mode,
      holding: talk.holding,
      notice: talk.tooLoud ? TOO_LOUD.text : "",
      talkText: viewTalking(log, nowMs),
    },
    lastHeard: talk.lastHeard,
    lastSpoken: talk.lastSpoken,
    question: log.questions[0]?.prompt,
    headline: viewHeadline(perfusion),
    bar: viewBar(perfusion, protocol),
    targetLines: viewTargets(log, protocol),
    ...viewCourse(log, protocol, nowMs),
    why: viewWhy(protocol, log, why.shown, nowMs),
    handover: handover?.isShown !== true ? [] : showHandover(protocol, log, nowMs),
    tiles: viewTiles(log, protocol, nowMs),
    drugs: viewDrugs(log, protocol, nowMs),
    ...viewList(log, protocol, nowMs),
    alerts: viewAlerts(log, protocol, nowMs, talk.faults),
    settings: viewSettings(settings),
    hearMe: viewHearMe(talk.hearMe, nowMs),
    phrases: examplePhrases(grammarState(protocol, log)),
  };
}
