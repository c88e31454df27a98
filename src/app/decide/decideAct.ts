import { unreachable } from "../../core/unreachable.ts";
import type { Intent } from "../../language/intent.ts";
import { askDisregard, askDoses, askStandBy, askStep } from "../../language/sentences/act.ts";
import { askNewCase } from "../../language/sentences/caseRecord.ts";
import { UNKNOWN_STEP } from "../../language/sentences/list.ts";
import { sentences } from "../../language/sentences/sentence.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { Act, NewFact, Question } from "../../log/facts.ts";
import { selectCalled } from "../../log/steps/openSteps.ts";
import { findMedicine } from "../../protocol/findMedicine.ts";
import { findStep } from "../../protocol/findStep.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import type { AppContext } from "../context.ts";
import { askQuestion } from "./askQuestion.ts";
import { decideDose } from "./care/decideDose.ts";
import { judgeAnswer, recordAnswer } from "./care/list/answerStep.ts";
import { recordAffirmed } from "./care/recordAffirmed.ts";
import { answered, refused, type Decision } from "./decision.ts";
import { newestEntry, strikeEntry } from "./disregard.ts";
import type { Source } from "./recordStatement.ts";
import { carryOutStrike } from "./strike/decideStrike.ts";

export const SAY_AGAIN = "Say again.";

/** What would be done, where it is something that must not be done on a doubtful hearing; nothing where it changes little. */
function actOf(
  { protocol }: AppContext,
  log: CaseState,
  intent: Intent,
  { heard, by }: Source,
  nowMs: number,
): Act | undefined {
  switch (intent.kind) {
    case "dose":
      return findMedicine(protocol, intent.drugId) && { kind: "dose", drugId: intent.drugId };
    case "step": {
      const stepId = intent.stepId ?? selectCalled(log, protocol, nowMs)?.step.id;
      const judged = stepId === undefined ? undefined : judgeAnswer(protocol, { ...intent, stepId }, by);
      return judged?.ok ? { kind: "step", stepId: judged.value.step.id, ...judged.value.given } : undefined;
    }
    case "command": {
      if (intent.command === "standBy") return { kind: "standBy" };
      const newest = intent.command === "disregard" ? newestEntry(protocol, log) : undefined;
      // While a question waits, "disregard" may mean the question: then it must be said again.
      return newest && log.questions.length === 0 ? { kind: "disregard", targetIds: newest.targetIds } : undefined;
    }
    case "vitals":
    case "number":
    case "unit":
    case "why":
      return undefined;
    default:
      return { kind: "words", words: heard };
  }
}

/** Questions about the same kind of thing: it was said anew. */
const aboutSame = (log: CaseState, acts: readonly Act[]): readonly Question[] =>
  log.questions.filter(({ acts: asked = [] }) =>
    asked.some((one) => acts.some((other) => one.kind === other.kind && stepOf(one) === stepOf(other))),
  );
const stepOf = (act: Act): string | undefined => (act.kind === "step" ? act.stepId : undefined);

/** Closes the questions that saying this again answers. */
export const closedBy = (log: CaseState, acts: readonly Act[]): readonly NewFact[] =>
  aboutSame(log, acts).map(({ id }) => ({ type: "question.closed", questionId: id, outcome: "restated" }));

/** The question, naming what would be done. */
function promptOf(protocol: Protocol, log: CaseState, acts: readonly Act[], heard: string): string {
  const [first] = acts;
  switch (first?.kind) {
    case "dose":
      return askDoses(
        acts.flatMap((a) => (a.kind === "dose" ? (findMedicine(protocol, a.drugId)?.spokenName ?? []) : [])),
      );
    case "step": {
      const step = findStep(protocol, first.stepId);
      return step === undefined ? sentences(`${heard}?`) : askStep(step, first);
    }
    case "disregard":
      return askDisregard(newestEntry(protocol, log)?.words ?? "");
    case "standBy":
      return askStandBy;
    case "words":
      return sentences(`${first.words}?`);
    case "newCase":
      return askNewCase(log, first.rehearsal);
    // Never asked about like this: what is to be recorded or struck is asked by those who know its words.
    case "record":
    case "strike":
    case undefined:
      return SAY_AGAIN;
    default:
      return unreachable(first);
  }
}

/**
 * The sound left a doubt about something that is no value: it is named and asked, and done when it is affirmed. Of several
 * only doses are offered side by side: a choice between longer things cannot be kept in mind.
 */
export function askAct(
  context: AppContext,
  log: CaseState,
  intents: readonly Intent[],
  source: Source,
  nowMs: number,
): Decision {
  const acts = intents.flatMap((intent) => actOf(context, log, intent, source, nowMs) ?? []);
  const allDoses = acts.every(({ kind }) => kind === "dose");
  if (acts.length === 0 || acts.length < intents.length || (acts.length > 1 && !allDoses)) return refused(SAY_AGAIN);
  const prompt = promptOf(context.protocol, log, acts, source.heard);
  return askQuestion(log, { prompt, source, nowMs }, { reason: "acoustic", acts }, closedBy(log, acts));
}

function carryOut(context: AppContext, log: CaseState, { heard, by }: Question, act: Act, nowMs: number): Decision {
  switch (act.kind) {
    case "dose":
      return decideDose(context, log, act.drugId, { heard, by }, nowMs);
    case "step": {
      const { kind: _kind, stepId, ...given } = act;
      const step = findStep(context.protocol, stepId);
      return step === undefined ? refused(UNKNOWN_STEP) : recordAnswer(log, step, given, { heard, by }, nowMs);
    }
    case "standBy":
      return standBy(context, nowMs);
    // The words are understood anew, which is not this file's business: see `decide`.
    case "words":
      return refused(SAY_AGAIN);
    case "newCase":
      return { facts: [], outcome: "recorded", reply: { kind: "none" }, effect: act };
    case "record":
      return recordAffirmed(context, log, act.facts, nowMs, act.forRate);
    case "strike":
      return carryOutStrike(context, log, act, { heard, by }, nowMs);
    case "disregard": {
      const newest = newestEntry(context.protocol, log);
      if (newest === undefined || newest.targetIds.join() !== act.targetIds.join())
        return answered("The last entry is another one now. Say disregard again.");
      return strikeEntry(newest);
    }
  }
}

/** The question asked before this one, which now waits again; the value of a step is asked for once. */
export const waitingAfter = (log: CaseState, closed: Question): string | undefined =>
  log.questions.find((q) => q.id !== closed.id && q.wants?.kind !== "stepValue")?.prompt;

/** Affirmed: what was asked about is done, and the question is closed. */
export function takeAct(context: AppContext, log: CaseState, question: Question, act: Act, nowMs: number): Decision {
  const { facts, outcome, reply, effect } = carryOut(context, log, question, act, nowMs);
  // Two questions in one breath are one too many: the older one waits until the new one is answered.
  const then = outcome === "asked" ? undefined : waitingAfter(log, question);
  const closed: NewFact = { type: "question.closed", questionId: question.id, outcome: "affirmed" };
  const spoken = reply.kind === "words" ? { ...reply, text: sentences(reply.text, then) } : reply;
  return {
    facts: [closed, ...facts],
    outcome,
    ...(effect === undefined ? {} : { effect }),
    reply: spoken.kind === "dose" ? { ...spoken, then: sentences(spoken.then, then) } : spoken,
  };
}

export const standBy = ({ protocol }: AppContext, nowMs: number): Decision =>
  answered("Standing by.", [{ type: "standBy.started", untilMs: nowMs + protocol.timers.standByS.value * 1000 }]);
