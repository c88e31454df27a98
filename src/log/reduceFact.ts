import { unreachable } from "../core/unreachable.ts";
import { isWorse } from "../protocol/priority.ts";
import { emptyCase, type AlertState, type CaseState, type VitalEntry } from "./caseState.ts";
import { above } from "./chains.ts";
import type { Fact } from "./facts.ts";
import { phasesAfter } from "./phase.ts";
import { acknowledgePrompt, reduceCare } from "./reduceCare.ts";
import { strike } from "./strike.ts";
import { markSaid, reduceTalk } from "./talkState.ts";

type Of<T extends Fact["type"]> = Extract<Fact, { readonly type: T }>;
type Recording = Extract<Fact, { readonly readingId: string }>;

/** Facts of one breath share a reading and follow one another; the first fact of another reading starts anew. */
function withReading(state: CaseState, fact: Recording): CaseState["lastReading"] {
  const last = state.lastReading;
  const facts = last?.readingId === fact.readingId ? [...last.facts, fact] : [fact];
  return { readingId: fact.readingId, seq: state.factCount, facts, factIds: facts.map((f) => f.id) };
}

function recordVital(state: CaseState, fact: Of<"vital.recorded">): CaseState["vitals"] {
  const { v: _shape, type: _type, certainty: _certainty, confirmation: _confirmation, corrects, ...value } = fact;
  const entry: VitalEntry = { ...value, seq: state.factCount };
  const chain = state.vitals[fact.code];
  // As old as what it corrects, and where that stood: it was not taken when it was said.
  const inPlace =
    corrects &&
    above(
      chain,
      ({ entry: { id } }) => id === corrects.id,
      (target) => ({
        entry: { ...entry, atMs: corrects.takenAtMs, seq: target.entry.seq },
        earlier: target,
      }),
    );
  return { ...state.vitals, [fact.code]: inPlace ?? { entry, earlier: chain } };
}

function recordFinding(state: CaseState, fact: Of<"finding.recorded">): CaseState["findings"] {
  const stamp = { id: fact.id, seq: state.factCount, atMs: fact.atMs, earlier: state.findings[fact.code] };
  const { v: _shape, type: _type, heard: _heard, by: _by, ...finding } = fact;
  return { ...state.findings, [fact.code]: { ...finding, ...stamp } };
}

/** A new or worse alert has something to say, whoever had it before; a milder one has already said it. */
function raise(before: AlertState | undefined, fact: Of<"alert.raised">, seq: number): AlertState {
  const { alertId, priority, value, atMs, escalated = false } = fact;
  if (before !== undefined && isWorse(before.priority, priority)) return { ...before, priority, escalated };
  return {
    alertId,
    priority,
    escalated,
    raisedAtMs: atMs,
    raisedAtSeq: seq,
    announcedAtMs: before?.announcedAtMs,
    announcedAtSeq: before?.announcedAtSeq,
    keptValue: value,
    acknowledgedAtMs: undefined,
    spoken: false,
    times: 0,
  };
}

/** More than any cap on spoken alerts lets through. */
const SPOKEN_KEPT = 32;

const withSpoken = (state: CaseState, atMs: number): CaseState => ({
  ...state,
  spokenAtMs: [atMs, ...state.spokenAtMs].slice(0, SPOKEN_KEPT),
});

/** What the fact changes; counting it is left to the caller. */
function changed(state: CaseState, fact: Fact): CaseState {
  const seq = state.factCount;
  switch (fact.type) {
    case "case.opened":
      // Nothing of another patient may stay.
      return {
        ...emptyCase,
        caseId: fact.caseId,
        label: fact.label,
        isRehearsal: fact.rehearsal,
        openedAtMs: fact.atMs,
        protocolMark: fact.protocol,
      };
    case "device.slept":
      return state;
    case "case.closed":
      return { ...state, isClosed: true };
    case "protocol.replaced":
      return { ...state, protocolMark: fact.protocol };
    case "vital.recorded":
      return { ...state, vitals: recordVital(state, fact), lastReading: withReading(state, fact) };
    case "finding.recorded":
      return { ...state, findings: recordFinding(state, fact), lastReading: withReading(state, fact) };
    case "sex.recorded":
      return {
        ...state,
        sex: { id: fact.id, sex: fact.sex, earlier: state.sex },
        lastReading: withReading(state, fact),
      };
    case "cause.recorded":
      return {
        ...state,
        cause: { id: fact.id, cause: fact.cause, earlier: state.cause },
        lastReading: withReading(state, fact),
      };
    case "herniation.recorded":
      return {
        ...state,
        herniation: { id: fact.id, seq, atMs: fact.atMs, present: fact.present, earlier: state.herniation },
        lastReading: withReading(state, fact),
      };
    case "entry.struck":
      return strike(state, fact.targetIds);
    case "question.asked":
      return { ...state, questions: [fact.question, ...state.questions] };
    case "question.closed": {
      const [closed] = state.questions.filter(({ id }) => id === fact.questionId);
      const isLost = closed !== undefined && fact.outcome === "unconfirmed";
      return {
        ...state,
        questions: state.questions.filter((question) => question !== closed),
        unconfirmed: isLost ? [...state.unconfirmed, closed] : state.unconfirmed,
      };
    }
    case "step.called":
      return { ...state, calledStepId: fact.stepId, lastCall: { seq, atMs: fact.atMs } };
    case "step.answered": {
      const { stepId, answer, value, reason, role, heard, atMs, id: factId } = fact;
      const entry = { seq, answer, value, reason, role, heard, atMs, factId, earlier: state.steps[stepId] };
      return {
        ...state,
        steps: { ...state.steps, [stepId]: entry },
        calledStepId: state.calledStepId === stepId ? undefined : state.calledStepId,
      };
    }
    case "clock.changed":
      return { ...state, setForwardMs: state.setForwardMs + fact.byMs };
    case "standBy.started":
      return { ...state, standByUntilMs: fact.untilMs };
    case "alert.raised": {
      const alert = raise(state.alerts[fact.alertId], fact, seq);
      return { ...state, alerts: { ...state.alerts, [fact.alertId]: alert } };
    }
    case "alert.announced": {
      const alert = state.alerts[fact.alertId];
      if (alert === undefined) return state;
      const announced = {
        ...alert,
        announcedAtMs: fact.atMs,
        announcedAtSeq: seq,
        keptValue: fact.value,
        spoken: fact.unspoken !== true,
        times: alert.times + 1,
      };
      const spoke = fact.unspoken === true || fact.ofDevice === true ? state : withSpoken(state, fact.atMs);
      return { ...spoke, alerts: { ...state.alerts, [fact.alertId]: announced } };
    }
    case "alert.acknowledged": {
      if (fact.key !== undefined) return { ...state, care: acknowledgePrompt(state.care, fact.alertId, fact.key) };
      const alert = state.alerts[fact.alertId];
      if (alert === undefined) return state;
      return { ...state, alerts: { ...state.alerts, [fact.alertId]: { ...alert, acknowledgedAtMs: fact.atMs } } };
    }
    case "alerts.paused":
    case "talk.set":
    case "voice.set":
    case "speech.started":
    case "speech.cut":
      return { ...state, talk: reduceTalk(state.talk, fact) };
    case "alert.cleared": {
      const { [fact.alertId]: _cleared, ...alerts } = state.alerts;
      return { ...state, alerts };
    }
    case "phase.entered":
    case "airway.event":
    case "clock.started":
    case "clock.stopped":
    case "strength.affirmed":
    case "dose.said":
    case "drug.given":
    case "infusion.set":
    case "fluid.given":
    case "cylinder.recorded":
    case "recipe.started":
    case "recipe.moved":
    case "recipe.ended":
    case "rescue.started":
    case "rescue.ended":
    case "failure.called":
    case "list.read":
      return { ...state, care: reduceCare(state.care, fact, seq) };
    case "prompt.announced":
      return {
        ...(fact.callOut === true || fact.unspoken === true ? state : withSpoken(state, fact.atMs)),
        care: reduceCare(state.care, fact, seq),
      };
    default:
      return unreachable(fact);
  }
}

/** One fact in, one new state out. No clock, no storage; the cost does not grow with the case, a strike far back aside. */
export function reduceFact(state: CaseState, fact: Fact): CaseState {
  const next = changed(state, fact);
  const stamp = { seq: state.factCount, atMs: fact.atMs, factId: fact.id };
  const phases = phasesAfter(next.care, fact, stamp);
  const care = phases === next.care.phases ? next.care : { ...next.care, phases };
  const talk = markSaid(next.talk, fact, state.factCount);
  return { ...next, care, talk, factCount: next.factCount + 1 };
}

/** The state after these facts, oldest first. */
export const reduceFacts = (facts: readonly Fact[], from: CaseState = emptyCase): CaseState =>
  facts.reduce(reduceFact, from);
