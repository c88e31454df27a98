import type { WhyAbout } from "../language/intent.ts";
import { sayDose, sayNoDose } from "../language/sentences/dose.ts";
import { sayConsequence, sayDisagreement, sayReading } from "../language/sentences/reading.ts";
import { needsPauses } from "../language/sentences/safeNumber.ts";
import { sentences } from "../language/sentences/sentence.ts";
import { sayStatus } from "../language/sentences/status.ts";
import { sayChangedTargets } from "../language/sentences/targets.ts";
import { sayWhy } from "../language/sentences/why.ts";
import type { CaseState } from "../log/caseState.ts";
import type { Statement } from "../log/facts.ts";
import { selectPerfusion } from "../log/perfusion.ts";
import { mergeBackground } from "../log/statements.ts";
import { selectTargets } from "../log/targets.ts";
import { findMedicine } from "../protocol/findMedicine.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { planDrug } from "../rules/drugPlan.ts";
import type { AppState } from "./context.ts";
import type { Decision } from "./decide/decision.ts";
import { partsOf, tellHandover, type ToldHandover } from "./handover.ts";
import { tellHowOld } from "./howOld.ts";
import type { Topic } from "./topic.ts";
import { isMarkEnough, saysConsequence } from "./talkLevel.ts";
import { tellEverything, tellMargin } from "./tellEverything.ts";
import { explain, topicOf, topicOfStatement } from "./why.ts";

/** The words of a reply, and the number it speaks of: what "why" then means. */
type Reply = {
  readonly text: string;
  readonly withinMs?: number;
  readonly topic?: Topic;
  readonly explained?: true;
  readonly told?: ToldHandover;
};

/** What was said, and what is now true. */
export type Replying = {
  readonly protocol: Protocol;
  /** Before the utterance. */
  readonly before: AppState;
  /** With its facts, and those of the rules. */
  readonly log: CaseState;
  /** An alert is about to give MAP or CPP against its target. */
  readonly alerted: boolean;
  /** What alerts that are only a tone have to say of what was recorded. */
  readonly toned: readonly string[];
  readonly nowMs: number;
};

/** A little under four seconds, the device's own delay included. */
const WITHIN_MS = 3900;

const merged = (statements: readonly Statement[]): Statement => ({
  vitals: statements.flatMap((s) => s.vitals),
  findings: statements.flatMap((s) => s.findings),
  ...mergeBackground(statements),
});

function sayRecorded(
  statement: Statement,
  { protocol, log, alerted, toned, nowMs }: Replying,
): readonly (string | undefined)[] {
  const perfusion = selectPerfusion(log, protocol, nowMs);
  const silent = alerted || !protocol.readBack.consequence.value || !saysConsequence(log.talk.level, perfusion);
  const consequence = silent ? undefined : sayConsequence(statement, perfusion);
  const reading = sayReading(statement, protocol.region, consequence !== undefined);
  return [reading, consequence, ...toned, sayDisagreement(statement, perfusion)];
}

/** Where the soft sound is enough: still that a mean which was just said cannot be right. */
function sayOnlyDoubt(statement: Statement, { protocol, log, nowMs }: Replying): readonly (string | undefined)[] {
  const doubt = sayDisagreement(statement, selectPerfusion(log, protocol, nowMs));
  return doubt === undefined ? [] : [sayReading(statement, protocol.region), doubt];
}

/** The drug that was heard is named whatever the answer: it may be another than the one that was said. */
function replyDose(
  { drugId, heard, then }: Extract<Decision["reply"], { kind: "dose" }>,
  { protocol, log, nowMs }: Replying,
): Reply {
  const plan = planDrug(log, protocol, drugId, nowMs);
  if (plan.ok) return { text: sentences(sayDose(plan.value), then), topic: { kind: "dose", drugId } };
  const name = findMedicine(protocol, drugId)?.spokenName ?? heard;
  return { text: sentences(sayNoDose(plan.error, name), then) };
}

const NOTHING_TO_EXPLAIN: Readonly<Partial<Record<WhyAbout, string>>> = {
  dose: "No dose said yet.",
  alert: "No alert stands.",
};

function replyWhy(about: WhyAbout, { protocol, before, log, nowMs }: Replying): Reply {
  const topic = topicOf(about, protocol, log, before.why);
  if (topic === undefined) return { text: NOTHING_TO_EXPLAIN[about] ?? "No number said yet." };
  const explanation = explain(protocol, log, topic, nowMs);
  if (explanation === undefined) return { text: "That number is not known now." };
  return { text: sayWhy(explanation, nowMs), topic, explained: true };
}

/** The reply to an utterance, made after its facts are in, so that it speaks of what is now true. */
export function sayReply(decision: Decision, replying: Replying): Reply {
  const { protocol, before, log, toned, nowMs } = replying;
  const { reply } = decision;
  const isSilent = isMarkEnough(log.talk.level, decision);
  const changed = sayChangedTargets(selectTargets(before.log, protocol), selectTargets(log, protocol), protocol.region);
  // A question that follows is not hurried, and without pauses "thirty, three zero" begins like another number.
  const isAsking = reply.kind === "recorded" && reply.then !== undefined;
  const briskly = (text: string) =>
    changed === undefined || isAsking || needsPauses(text) ? {} : { withinMs: WITHIN_MS };
  switch (reply.kind) {
    case "none":
      return { text: "" };
    case "words": {
      const text = sentences(isSilent ? undefined : reply.text, ...toned, isSilent ? undefined : changed);
      return { text, ...briskly(text) };
    }
    case "status":
      return {
        text: sayStatus(selectPerfusion(log, protocol, nowMs)),
        withinMs: WITHIN_MS,
        topic: { kind: "value", code: "map" },
      };
    case "margin":
      return { text: tellMargin(protocol, log, nowMs), topic: { kind: "value", code: "map" } };
    case "everything":
      return { text: tellEverything(protocol, log, nowMs) };
    case "howOld":
      return tellHowOld(protocol, log, reply.about, before.why, nowMs);
    case "handover": {
      const told = tellHandover(protocol, log, reply.how, before.handover, nowMs);
      return { text: sentences(...partsOf(told)), told };
    }
    case "dose":
      return replyDose(reply, replying);
    case "why":
      return replyWhy(reply.about, replying);
    case "recorded": {
      const statement = merged(reply.statements);
      const topic = topicOfStatement(statement);
      const text = isSilent
        ? sentences(...toned, ...sayOnlyDoubt(statement, replying))
        : sentences(...sayRecorded(statement, replying), changed, reply.then);
      return { text, ...briskly(text), ...(topic !== undefined && { topic }) };
    }
  }
}
