import type { CaseState } from "../log/caseState.ts";
import type { Fact, NewFact } from "../log/facts.ts";
import { reduceFacts } from "../log/reduceFact.ts";
import { alertsDue } from "../rules/alertsDue.ts";
import { promptsDue } from "../rules/promptsDue.ts";
import { questionsDue } from "../rules/questionsDue.ts";
import { sayUnconfirmed } from "../language/sentences/alert.ts";
import { sentences } from "../language/sentences/sentence.ts";
import type { Announcement } from "./announcement.ts";
import { grammarState, type AppContext, type AppState } from "./context.ts";
import { askOfSign } from "./decide/care/course/decideRescue.ts";
import { decide } from "./decide/decide.ts";
import { killersDue, WARNING_ALERT_ID } from "./decide/care/list/killers.ts";
import { listAfter, listDue } from "./decide/care/list/listAfter.ts";
import { stamp } from "./decide/stamp.ts";
import { doubtSound } from "./doubtfulSound.ts";
import { askWhetherGoingOn } from "./goingOn.ts";
import { interpret } from "./interpret.ts";
import { doubtOverlap } from "./overlap.ts";
import type { Utterance } from "./ports.ts";
import { sayReply } from "./sayReply.ts";
import type { Outcome } from "./screenView.ts";
import { isSpokenFor, promptsAnswered, speakAlert, speakOffer, speakPhase, speakPrompt } from "./speakDue.ts";
import { isSurprising } from "./surprise.ts";
import type { Topic, WhyState } from "./topic.ts";

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
      }
    | undefined;
  readonly announcements: readonly Announcement[];
  /** Alerts that no longer hold: whatever waits to be said of them is dropped. */
  readonly withdrawn: readonly string[];
};

type Folded = { readonly log: CaseState; readonly facts: readonly Fact[] };

function append({ log, facts }: Folded, added: readonly NewFact[], nowMs: number): Folded {
  const stamped = stamp(log, added, nowMs);
  return { log: reduceFacts(stamped, log), facts: [...facts, ...stamped] };
}

/** Runs the rules over the state as it is now: what is due is put into the log and into words. */
function applyRules(context: AppContext, original: CaseState, before: Folded, nowMs: number) {
  const { protocol } = context;
  const announcements: Announcement[] = [];
  const closed = questionsDue(before.log, protocol, nowMs);
  for (const fact of closed) {
    if (fact.type !== "question.closed") continue;
    const question = before.log.questions.find((q) => q.id === fact.questionId);
    // The answer that it asked about stands without its value.
    if (question !== undefined && question.wants?.kind !== "stepValue")
      announcements.push({ text: sayUnconfirmed(question), priority: "low", alertId: undefined });
  }
  let folded = append(before, closed, nowMs);
  const due = alertsDue(folded.log, protocol, nowMs);
  folded = append(folded, due.facts, nowMs);
  const prompts = promptsDue(folded.log, protocol, nowMs);
  for (const alert of due.announce) {
    const { announcement, fact } = speakAlert(alert, isSpokenFor(alert, prompts));
    if (announcement !== undefined) announcements.push(announcement);
    folded = append(folded, [fact], nowMs);
  }
  const spoken = [
    ...prompts.map((prompt) => speakPrompt(folded.log, protocol, prompt, nowMs)),
    ...speakOffer({ before: original, after: folded.log }, protocol, due.announce, nowMs),
  ];
  for (const { announcement, facts } of spoken) {
    announcements.push(announcement);
    folded = append(folded, facts, nowMs);
  }
  const killers = killersDue(folded.log, protocol, folded.facts, nowMs);
  if (killers !== undefined) {
    announcements.push({ text: killers.text, priority: "medium", alertId: WARNING_ALERT_ID });
    folded = append(folded, [killers.fact], nowMs);
  }
  const cleared = due.facts.flatMap((f) => (f.type === "alert.cleared" ? [f.alertId] : []));
  const withdrawn = [...cleared, ...promptsAnswered(original, folded.log, protocol, nowMs)];
  return { folded, announcements, withdrawn };
}

/** Only a high alert cuts in on a challenge that is being read; whatever is milder waits for its end. */
const hasCutIn = (announcements: readonly Announcement[]): boolean =>
  announcements.some(({ priority }) => priority === "high");

/** What the first alert among these speaks of. */
function alertTopic({ protocol }: AppContext, announcements: readonly Announcement[]): Topic | undefined {
  const codes = announcements.flatMap(({ alertId }) => protocol.alerts.find((a) => a.id === alertId)?.code ?? []);
  return codes[0] && { kind: "value", code: codes[0] };
}

/** An alert that gives MAP or CPP against its target: the reply need not say it too. */
function speaksOfPerfusion({ protocol }: AppContext, { alertId }: Announcement): boolean {
  const rule = protocol.alerts.find((a) => a.id === alertId);
  return rule?.code === "map" || rule?.code === "cpp";
}

/** What "why" will mean after this turn. A dose stays the last dose while other numbers are said. */
function nextWhy(before: WhyState, said: Topic | undefined, isShown: boolean): WhyState {
  return {
    lastNumber: said ?? before.lastNumber,
    lastDose: said?.kind === "dose" ? said : before.lastDose,
    shown: isShown ? said : before.shown,
  };
}

/** What "say again" repeats: all that this turn says, in the order in which it is said. */
function lastSaid(before: AppState, announcements: readonly Announcement[], reply: string): string | undefined {
  const said = sentences(...announcements.map((a) => a.text), reply);
  return said === "" ? before.lastSaid : said;
}

/** One utterance: what it means, what follows, what is now due. Pure. */
export function takeUtterance(context: AppContext, state: AppState, utterance: Utterance, nowMs: number): Turn {
  const grammar = grammarState(context.protocol, state.log);
  const alone = interpret(context.grammars, grammar, utterance, (intent) =>
    isSurprising(state.log, context.protocol, intent, nowMs),
  );
  const understood = askWhetherGoingOn(context.grammars, grammar, utterance, alone);
  const doubted = utterance.overlapped ? doubtOverlap(understood, state.lastSaid ?? "") : understood;
  const isDoubtful = utterance.doubtful === true || utterance.shape?.clipped === true;
  const heard = isDoubtful ? doubtSound(doubted, state.log.questions) : doubted;
  const decision = decide(context, state, heard, utterance.by, nowMs);
  const decided = append({ log: state.log, facts: [] }, decision.facts, nowMs);
  const { protocol } = context;
  const ruled = applyRules(context, state.log, decided, nowMs);
  const { withdrawn } = ruled;
  const asked = askOfSign(protocol, state.log, ruled.folded.log, utterance.by, nowMs);
  const questioned = append(ruled.folded, asked.facts, nowMs);
  const list = listAfter(context, state.log, questioned.log, decision, nowMs);
  const folded = append(questioned, list.facts, nowMs);
  const calledAloud = decision.facts.some(({ type }) => type === "phase.entered");
  const announcements = [...ruled.announcements, ...speakPhase(state.log, folded.log, calledAloud)];
  const alerted = announcements.some((a) => speaksOfPerfusion(context, a));
  const reply = sayReply(decision, { protocol, before: state, log: folded.log, alerted, nowMs });
  // An answer to a question is what was asked for; beside a read-back it is the alert that wants a reason.
  const isAsked = decision.reply.kind !== "recorded" && reply.topic !== undefined;
  const topic = isAsked ? reply.topic : (alertTopic(context, announcements) ?? reply.topic);
  const text = sentences(reply.text, asked.text, list.text);
  // With a challenge after it, it would be hurried for the sake of a budget that is for it alone.
  const brisk =
    reply.withinMs === undefined || list.text !== "" || asked.text !== undefined ? {} : { withinMs: reply.withinMs };
  return {
    state: {
      log: folded.log,
      lastSaid: lastSaid(state, ruled.announcements, text),
      why: nextWhy(state.why, topic, reply.explained ?? false),
    },
    facts: folded.facts,
    answer: { words: heard.words, outcome: decision.outcome, reply: text, ...brisk },
    announcements,
    withdrawn,
  };
}

/** Time has passed and nothing was said: only what is due by itself. Pure. */
export function takeTick(context: AppContext, state: AppState, nowMs: number): Turn {
  const {
    folded: ruled,
    announcements,
    withdrawn,
  } = applyRules(context, state.log, { log: state.log, facts: [] }, nowMs);
  const list = listDue(context, state.log, ruled.log, hasCutIn(announcements), nowMs);
  if (list.text !== "") announcements.push({ text: list.text, priority: "none", alertId: undefined });
  const folded = append(ruled, list.facts, nowMs);
  const next = {
    log: folded.log,
    lastSaid: lastSaid(state, announcements, ""),
    why: nextWhy(state.why, alertTopic(context, announcements), false),
  };
  return { state: next, facts: folded.facts, answer: undefined, announcements, withdrawn };
}
