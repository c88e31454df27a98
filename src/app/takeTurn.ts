import type { CaseState } from "../log/caseState.ts";
import type { Fact, NewFact } from "../log/facts.ts";
import { reduceFacts } from "../log/reduceFact.ts";
import { alertsDue } from "../rules/alerts/alertsDue.ts";
import type { DeviceFault } from "../rules/alerts/condition.ts";
import { bodiesSaid } from "../rules/alerts/standing.ts";
import { newSign } from "../rules/herniationWatch.ts";
import { promptsDue } from "../rules/promptsDue.ts";
import { questionsDue } from "../rules/questionsDue.ts";
import { sayUnconfirmed, sayWithdrawn } from "../language/sentences/alert.ts";
import { sentences } from "../language/sentences/sentence.ts";
import type { Announcement } from "./announcement.ts";
import { grammarState, type AppContext, type AppState } from "./context.ts";
import { askOfSign } from "./decide/care/course/decideRescue.ts";
import type { CaseEffect } from "./decide/decision.ts";
import { decide } from "./decide/decide.ts";
import { acknowledgedByAnswer } from "./decide/talk/acknowledgedByAnswer.ts";
import { killersDue, WARNING_ALERT_ID } from "./decide/care/list/killers.ts";
import { listAfter, listDue } from "./decide/care/list/listAfter.ts";
import { stamp, type Provenance } from "./decide/stamp.ts";
import { provenanceOf } from "./provenance.ts";
import { doubtSound } from "./doubtfulSound.ts";
import { askWhetherGoingOn } from "./goingOn.ts";
import { nextHandover, partsWith } from "./handover.ts";
import { interpret } from "./interpret.ts";
import { doubtOverlap } from "./overlap.ts";
import type { Utterance } from "./ports.ts";
import { sayReply } from "./sayReply.ts";
import type { Outcome } from "./screenView.ts";
import {
  isSaidAt,
  promptsAnswered,
  speakAlerts,
  speakOffer,
  speakPhase,
  speakPrompt,
  withdrawnOf,
  type Spoken,
} from "./speakDue.ts";
import { isSurprising } from "./surprise.ts";
import type { Topic } from "./topic.ts";
import { nextWhy } from "./why.ts";
import { withoutExactAge } from "./withoutExactAge.ts";

/** What one input led to. Nothing has happened yet: the facts must be durable before anything of it is said. */
export type Turn = {
  readonly state: AppState;
  readonly facts: readonly Fact[];
  readonly answer:
    | {
        readonly words: string;
        readonly outcome: Outcome;
        readonly reply: string;
        /** The reply is to be over by then: the status sentence, targets that changed. */
        readonly withinMs?: number;
        /** The reply in parts, each said in one go: a handover. */
        readonly parts?: readonly string[];
      }
    | undefined;
  readonly announcements: readonly Announcement[];
  /** Alerts that no longer hold: whatever waits to be said of them is dropped. */
  readonly withdrawn: readonly string[];
  /** To be done with the case as a whole, once the facts are durable. */
  readonly effect?: CaseEffect;
};

type Folded = { readonly log: CaseState; readonly facts: readonly Fact[] };

function append({ log, facts }: Folded, added: readonly NewFact[], nowMs: number, heard?: Provenance): Folded {
  const stamped = stamp(log, added, nowMs, heard);
  return { log: reduceFacts(stamped, log), facts: [...facts, ...stamped] };
}

/** The words of a question that nobody answered in time; where it wanted a step's value, the answer stands without it. */
function sayClosed(log: CaseState, closed: readonly NewFact[]): readonly Announcement[] {
  return closed.flatMap((fact) => {
    const question = fact.type === "question.closed" && log.questions.find((q) => q.id === fact.questionId);
    if (!question || question.wants?.kind === "stepValue") return [];
    return [{ text: sayUnconfirmed(question), priority: "low", alertId: undefined }];
  });
}

/** Runs the rules over the state as it is now: what is due is put into the log and into words. */
function applyRules(
  context: AppContext,
  original: CaseState,
  before: Folded,
  devices: readonly DeviceFault[],
  nowMs: number,
) {
  const { protocol } = context;
  const closed = questionsDue(before.log, protocol, nowMs);
  const announcements: Announcement[] = [...sayClosed(before.log, closed)];
  let folded = append(before, closed, nowMs);
  const struck = before.facts.some(({ type }) => type === "entry.struck");
  const due = alertsDue(folded.log, protocol, nowMs, devices, struck ? original : undefined);
  const cleared = due.facts.flatMap((f) => (f.type === "alert.cleared" ? [f.alertId] : []));
  const withdrawnText = struck ? sayWithdrawn(bodiesSaid(original, protocol, cleared, nowMs)) : undefined;
  folded = append(folded, due.facts, nowMs);
  const prompts = promptsDue(folded.log, protocol, nowMs);
  const isAsked = newSign(original, folded.log, protocol) !== undefined;
  const alerts = speakAlerts(due.announce, { prompts, isAsked, usual: protocol.region });
  folded = append(folded, [...alerts.spoken.flatMap(({ facts }) => facts), ...due.said], nowMs);
  // Past the cap on what may be spoken, another alert of this turn may have taken the last place.
  const stillDue = promptsDue(folded.log, protocol, nowMs);
  const said: Spoken[] = [...alerts.spoken];
  for (const prompt of stillDue) {
    const spoken = speakPrompt(folded.log, protocol, prompt, nowMs);
    folded = append(folded, spoken.facts, nowMs);
    said.push(spoken);
  }
  for (const offer of speakOffer({ before: original, after: folded.log }, protocol, due.announce, nowMs)) {
    folded = append(folded, offer.facts, nowMs);
    said.push(offer);
  }
  // The end of a measure changes what counts as a target: what stood by the old one is over with it.
  if (stillDue.length > 0) {
    const over = alertsDue(folded.log, protocol, nowMs, devices).facts.filter(({ type }) => type === "alert.cleared");
    folded = append(folded, over, nowMs);
  }
  announcements.push(...said.flatMap(({ announcement }) => announcement ?? []));
  const killers = killersDue(folded.log, protocol, folded.facts, nowMs);
  if (killers !== undefined) {
    announcements.push({ text: killers.text, priority: "medium", alertId: WARNING_ALERT_ID });
    folded = append(folded, [killers.fact], nowMs);
  }
  const untrue = struck ? due.facts.flatMap((f) => ("alertId" in f ? [f.alertId] : [])) : cleared;
  const withdrawn = [...withdrawnOf(untrue), ...promptsAnswered(original, folded.log, protocol, nowMs)];
  const level = folded.log.talk.level;
  return {
    folded,
    announcements: announcements.filter((a) => isSaidAt(level, a)),
    withdrawn,
    withdrawnText,
    toned: alerts.toned,
  };
}

/** Only a high alert cuts in on a challenge that is being read; whatever is milder waits for its end. */
const hasCutIn = (announcements: readonly Announcement[]): boolean =>
  announcements.some(({ priority }) => priority === "high");

/** What the first alert among these speaks of. */
function alertTopic({ protocol }: AppContext, announcements: readonly Announcement[]): Topic | undefined {
  const codes = announcements.flatMap(({ alertId }) => protocol.alerts.find((a) => a.id === alertId)?.code ?? []);
  const [code] = codes;
  return code && { kind: "value", code: code === "cppBound" ? "cpp" : code };
}

/** Words that give MAP or CPP against its target: the reply need not say it too. */
const speaksOfPerfusion = ({ text, about = [] }: Announcement): boolean =>
  text !== "" && (about.includes("map") || about.includes("cpp"));

/** What "say again" repeats: all that this turn says, in the order in which it is said. */
function lastSaid(before: AppState, announcements: readonly Announcement[], reply: string): string | undefined {
  const said = sentences(...announcements.map((a) => a.text), reply);
  return said === "" ? before.lastSaid : said;
}

/** One utterance: what it means, what follows, what is now due. Pure. */
export function takeUtterance(
  context: AppContext,
  state: AppState,
  utterance: Utterance,
  nowMs: number,
  devices: readonly DeviceFault[] = [],
): Turn {
  const grammar = grammarState(context.protocol, state.log);
  const alone = interpret(context.grammars, grammar, utterance, (intent) =>
    isSurprising(state.log, context.protocol, intent, nowMs),
  );
  const understood = askWhetherGoingOn(context.grammars, grammar, utterance, alone);
  const doubted = utterance.overlapped ? doubtOverlap(understood, state.lastSaid ?? "") : understood;
  const isDoubtful = utterance.doubtful === true || utterance.shape?.clipped === true;
  const sure = isDoubtful ? doubtSound(doubted, state.log.questions) : doubted;
  const heard = withoutExactAge(sure, state.log);
  const decision = decide(context, state, heard, utterance.by, nowMs);
  const { protocol } = context;
  const acknowledged = acknowledgedByAnswer(state.log, decision.facts);
  const said = [...decision.facts, ...acknowledged];
  const decided = append({ log: state.log, facts: [] }, said, nowMs, provenanceOf(heard, said));
  const ruled = applyRules(context, state.log, decided, devices, nowMs);
  const { withdrawn } = ruled;
  const asked = askOfSign(protocol, state.log, ruled.folded.log, utterance.by, nowMs);
  const questioned = append(ruled.folded, asked.facts, nowMs);
  const list = listAfter(context, state.log, questioned.log, decision, nowMs);
  const folded = append(questioned, list.facts, nowMs);
  const calledAloud = decision.facts.some(({ type }) => type === "phase.entered");
  const phase = speakPhase(state.log, folded.log, calledAloud).filter((a) => isSaidAt(folded.log.talk.level, a));
  const announcements = [...ruled.announcements, ...phase];
  const alerted = announcements.some(speaksOfPerfusion) || ruled.toned.length > 0;
  const reply = sayReply(decision, {
    protocol,
    before: state,
    log: folded.log,
    alerted,
    toned: ruled.toned,
    nowMs,
  });
  // An answer to a question is what was asked for; beside a read-back it is the alert that wants a reason.
  const isAsked = decision.reply.kind !== "recorded" && reply.topic !== undefined;
  const topic = isAsked ? reply.topic : (alertTopic(context, announcements) ?? reply.topic);
  const text = sentences(reply.text, ruled.withdrawnText, asked.text, list.text);
  // With a challenge after it, it would be hurried for the sake of a budget that is for it alone.
  const brisk =
    reply.withinMs === undefined || list.text !== "" || asked.text !== undefined ? {} : { withinMs: reply.withinMs };
  const parts = reply.told && { parts: partsWith(reply.told, ruled.withdrawnText, asked.text, list.text) };
  return {
    state: {
      log: folded.log,
      lastSaid: lastSaid(state, ruled.announcements, text),
      why: nextWhy(state.why, topic, reply.explained ?? false),
      handover: nextHandover(state.handover, decision, reply.told),
    },
    facts: folded.facts,
    answer: { words: heard.words, outcome: decision.outcome, reply: text, ...brisk, ...parts },
    announcements,
    withdrawn,
    ...(decision.effect === undefined ? {} : { effect: decision.effect }),
  };
}

/** Time has passed and nothing was said: only what is due by itself. Pure. */
export function takeTick(
  context: AppContext,
  state: AppState,
  nowMs: number,
  devices: readonly DeviceFault[] = [],
): Turn {
  const ruling = applyRules(context, state.log, { log: state.log, facts: [] }, devices, nowMs);
  const { folded: ruled, withdrawn } = ruling;
  const announcements = [...ruling.announcements];
  const list = listDue(context, state.log, ruled.log, hasCutIn(announcements), nowMs);
  if (list.text !== "") announcements.push({ text: list.text, priority: "none", alertId: undefined });
  const folded = append(ruled, list.facts, nowMs);
  const next = {
    log: folded.log,
    lastSaid: lastSaid(state, announcements, ""),
    why: nextWhy(state.why, alertTopic(context, announcements), false),
    handover: state.handover,
  };
  return { state: next, facts: folded.facts, answer: undefined, announcements, withdrawn };
}
