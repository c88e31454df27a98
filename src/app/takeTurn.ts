import type { CaseState } from "../log/caseState.ts";
import type { Fact, NewFact } from "../log/facts.ts";
import { reduceFacts } from "../log/reduceFact.ts";
import type { Priority } from "../protocol/priority.ts";
import { alertsDue } from "../rules/alertsDue.ts";
import { questionsDue } from "../rules/questionsDue.ts";
import { sayAlert, sayUnconfirmed } from "../language/sentences/alert.ts";
import { sentences } from "../language/sentences/sentence.ts";
import { grammarState, type AppContext, type AppState } from "./context.ts";
import { decide } from "./decide/decide.ts";
import { stamp } from "./decide/stamp.ts";
import { doubtSound } from "./doubtfulSound.ts";
import { askWhetherGoingOn } from "./goingOn.ts";
import { interpret } from "./interpret.ts";
import { doubtOverlap } from "./overlap.ts";
import type { Utterance } from "./ports.ts";
import { sayReply } from "./sayReply.ts";
import type { Outcome } from "./screenView.ts";
import { isSurprising } from "./surprise.ts";
import type { Topic, WhyState } from "./topic.ts";

/** Said without being asked. */
export type Announcement = {
  readonly text: string;
  readonly priority: Priority | "none";
  readonly alertId: string | undefined;
};

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
function applyRules(context: AppContext, before: Folded, nowMs: number) {
  const announcements: Announcement[] = [];
  const closed = questionsDue(before.log, context.protocol, nowMs);
  for (const fact of closed) {
    if (fact.type !== "question.closed") continue;
    const question = before.log.questions.find((q) => q.id === fact.questionId);
    if (question !== undefined)
      announcements.push({ text: sayUnconfirmed(question), priority: "low", alertId: undefined });
  }
  let folded = append(before, closed, nowMs);
  const due = alertsDue(folded.log, context.protocol, nowMs);
  folded = append(folded, due.facts, nowMs);
  for (const alert of due.announce) {
    const text = sayAlert(alert);
    announcements.push({ text, priority: alert.priority, alertId: alert.alertId });
    const { alertId, priority, value } = alert;
    folded = append(folded, [{ type: "alert.announced", alertId, priority, value, text }], nowMs);
  }
  const withdrawn = due.facts.flatMap((f) => (f.type === "alert.cleared" ? [f.alertId] : []));
  return { folded, announcements, withdrawn };
}

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
  const { folded, announcements, withdrawn } = applyRules(context, decided, nowMs);
  const alerted = announcements.some((a) => speaksOfPerfusion(context, a));
  const { protocol } = context;
  const reply = sayReply(decision, { protocol, before: state, log: folded.log, alerted, nowMs });
  // An answer to a question is what was asked for; beside a read-back it is the alert that wants a reason.
  const isAsked = decision.reply.kind !== "recorded" && reply.topic !== undefined;
  const topic = isAsked ? reply.topic : (alertTopic(context, announcements) ?? reply.topic);
  const brisk = reply.withinMs === undefined ? {} : { withinMs: reply.withinMs };
  return {
    state: {
      log: folded.log,
      lastSaid: lastSaid(state, announcements, reply.text),
      why: nextWhy(state.why, topic, reply.explained ?? false),
    },
    facts: folded.facts,
    answer: { words: heard.words, outcome: decision.outcome, reply: reply.text, ...brisk },
    announcements,
    withdrawn,
  };
}

/** Time has passed and nothing was said: only what is due by itself. Pure. */
export function takeTick(context: AppContext, state: AppState, nowMs: number): Turn {
  const { folded, announcements, withdrawn } = applyRules(context, { log: state.log, facts: [] }, nowMs);
  const next = {
    log: folded.log,
    lastSaid: lastSaid(state, announcements, ""),
    why: nextWhy(state.why, alertTopic(context, announcements), false),
  };
  return { state: next, facts: folded.facts, answer: undefined, announcements, withdrawn };
}
