import type { CaseState } from "../log/caseState.ts";
import type { Fact, NewFact, Statement } from "../log/facts.ts";
import { selectPerfusion } from "../log/perfusion.ts";
import { reduceFacts } from "../log/reduceFact.ts";
import type { Priority } from "../protocol/priority.ts";
import { alertsDue } from "../rules/alertsDue.ts";
import { questionsDue } from "../rules/questionsDue.ts";
import { sayAlert, sayUnconfirmed } from "../language/sentences/alert.ts";
import { sayConsequence, sayReading } from "../language/sentences/reading.ts";
import { sentences } from "../language/sentences/sentence.ts";
import { sayStatus } from "../language/sentences/status.ts";
import { grammarState, type AppContext, type AppState } from "./context.ts";
import { decide } from "./decide/decide.ts";
import type { Decision } from "./decide/decision.ts";
import { stamp } from "./decide/stamp.ts";
import { interpret } from "./interpret.ts";
import { doubtOverlap } from "./overlap.ts";
import type { Utterance } from "./ports.ts";
import type { Outcome } from "./screenView.ts";

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
        /** The reply is to be over by then: the status sentence. */
        readonly withinMs?: number;
      }
    | undefined;
  readonly announcements: readonly Announcement[];
  /** Alerts that no longer hold: whatever waits to be said of them is dropped. */
  readonly withdrawn: readonly string[];
};

/** A little under four seconds, the device's own delay included. */
const STATUS_WITHIN_MS = 3900;

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

const merged = (statements: readonly Statement[]): Statement => {
  const sex = statements.find((s) => s.sex !== undefined)?.sex;
  return {
    vitals: statements.flatMap((s) => s.vitals),
    findings: statements.flatMap((s) => s.findings),
    ...(sex === undefined ? {} : { sex }),
  };
};

/** The words of a reply, made after the facts are in, so that they speak of what is now true. */
function sayReply(context: AppContext, log: CaseState, decision: Decision, alerted: boolean, nowMs: number): string {
  const { reply } = decision;
  switch (reply.kind) {
    case "none":
      return "";
    case "words":
      return sentences(reply.text);
    case "status":
      return sayStatus(selectPerfusion(log, context.protocol, nowMs));
    case "recorded": {
      const statement = merged(reply.statements);
      const consequence = alerted
        ? undefined
        : sayConsequence(statement, selectPerfusion(log, context.protocol, nowMs));
      return sentences(sayReading(statement, consequence !== undefined), consequence, reply.then);
    }
  }
}

/** An alert that gives MAP or CPP against its target: the reply need not say it too. */
function speaksOfPerfusion({ protocol }: AppContext, { alertId }: Announcement): boolean {
  const rule = protocol.alerts.find((a) => a.id === alertId);
  return rule?.code === "map" || rule?.code === "cpp";
}

/** What "say again" repeats: all that this turn says, in the order in which it is said. */
function lastSaid(before: AppState, announcements: readonly Announcement[], reply: string): string | undefined {
  const said = sentences(...announcements.map((a) => a.text), reply);
  return said === "" ? before.lastSaid : said;
}

/** One utterance: what it means, what follows, what is now due. Pure. */
export function takeUtterance(context: AppContext, state: AppState, utterance: Utterance, nowMs: number): Turn {
  const understood = interpret(context.grammars[grammarState(state.log)], utterance);
  const heard = utterance.overlapped ? doubtOverlap(understood, state.lastSaid ?? "") : understood;
  const decision = decide(context, state, heard, utterance.by, nowMs);
  const decided = append({ log: state.log, facts: [] }, decision.facts, nowMs);
  const { folded, announcements, withdrawn } = applyRules(context, decided, nowMs);
  const alerted = announcements.some((a) => speaksOfPerfusion(context, a));
  const reply = sayReply(context, folded.log, decision, alerted, nowMs);
  const brisk = decision.reply.kind === "status" ? { withinMs: STATUS_WITHIN_MS } : {};
  return {
    state: { log: folded.log, lastSaid: lastSaid(state, announcements, reply) },
    facts: folded.facts,
    answer: { words: heard.words, outcome: decision.outcome, reply, ...brisk },
    announcements,
    withdrawn,
  };
}

/** Time has passed and nothing was said: only what is due by itself. Pure. */
export function takeTick(context: AppContext, state: AppState, nowMs: number): Turn {
  const { folded, announcements, withdrawn } = applyRules(context, { log: state.log, facts: [] }, nowMs);
  const next = { log: folded.log, lastSaid: lastSaid(state, announcements, "") };
  return { state: next, facts: folded.facts, answer: undefined, announcements, withdrawn };
}
