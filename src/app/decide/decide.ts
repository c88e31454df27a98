import type { Intent } from "../../language/intent.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { Question } from "../../log/facts.ts";
import type { AppContext, AppState } from "../context.ts";
import type { Interpretation } from "../interpret.ts";
import { slotForNumber } from "./correction.ts";
import { askAct, closedBy, doseOf, SAY_AGAIN } from "./decideAct.ts";
import { decideNumber, decideUnit } from "./decideAnswer.ts";
import { decideChoice, possibleReadings } from "./decideChoice.ts";
import { decideCommand } from "./decideCommand.ts";
import { decideStep } from "./decideStep.ts";
import { decideVitals } from "./decideVitals.ts";
import { ignored, refused, type Decision } from "./decision.ts";
import type { Source } from "./recordStatement.ts";

/** A question asked after the last reading was entered is what was said last. */
const isSaidLast = ({ askedAtMs }: Question, { lastReading }: CaseState): boolean =>
  lastReading?.facts.every(({ atMs }) => atMs < askedAtMs) ?? true;

function decideBareNumber(
  context: AppContext,
  log: CaseState,
  { correction, denies, number, unit }: Intent & { kind: "number" },
  source: Source,
  nowMs: number,
): Decision {
  const [question] = log.questions;
  if (!correction) return decideNumber(context, log, number, unit, source, nowMs);
  if (question !== undefined) {
    const isAnswer = denies === true && isSaidLast(question, log);
    // The value in question and the last reading both wait to be corrected: nobody knows which is meant.
    if (!isAnswer && log.lastReading !== undefined) return refused("Say which value.");
    // "Negative" to a number, and then that same number: one of the two was misheard.
    if (denies === true && question.candidates[0]?.number === number.value) return refused(question.prompt);
    return decideNumber(context, log, number, unit, source, nowMs);
  }
  const said = slotForNumber(log, number, unit);
  if (said === undefined) return refused("Say which value.");
  return decideVitals(context, log, [said], source, nowMs, { correction: true });
}

function decideIntent(context: AppContext, state: AppState, intent: Intent, source: Source, nowMs: number): Decision {
  const { log } = state;
  switch (intent.kind) {
    case "vitals": {
      const { items, correction, doubtful } = intent;
      return decideVitals(context, log, items, source, nowMs, {
        correction,
        unsure: doubtful && source.by !== "typed",
      });
    }
    case "number":
      return decideBareNumber(context, log, intent, source, nowMs);
    case "unit":
      return decideUnit(context, log, intent.unit, nowMs);
    case "command":
      return decideCommand(context, state, intent.command, nowMs);
    case "dose": {
      const closed = closedBy(log, [intent]);
      return { ...doseOf(intent.drugId, source.heard), facts: closed };
    }
    case "why":
      return { facts: [], outcome: "answered", reply: intent };
    case "step": {
      const stepId = intent.stepId ?? log.calledStepId;
      const closed = stepId === undefined ? [] : closedBy(log, [{ kind: "step", stepId, answer: intent.answer }]);
      const { facts, ...rest } = decideStep(context, log, stepId, intent.answer, source);
      return { ...rest, facts: [...closed, ...facts] };
    }
  }
}

/**
 * What follows from an utterance: facts to append and a reply, a question, or nothing. Pure; time comes in.
 *
 * @param nowMs Unix ms at which the utterance was understood.
 */
export function decide(
  context: AppContext,
  state: AppState,
  heard: Interpretation,
  by: Source["by"],
  nowMs: number,
): Decision {
  const source: Source = { heard: heard.words, by };
  switch (heard.kind) {
    case "outside":
      return ignored;
    case "unclear":
      return refused(SAY_AGAIN);
    case "meant":
      return decideIntent(context, state, heard.intent, source, nowMs);
    case "unsure": {
      const intents = possibleReadings(heard.intents);
      const [first, ...others] = intents;
      if (first === undefined) return ignored;
      if (intents.every(({ kind }) => kind !== "vitals")) return askAct(context, state.log, intents, source, nowMs);
      if (others.length > 0) return decideChoice(state.log, intents, heard.why, source, nowMs);
      if (first.kind !== "vitals" || first.correction) return refused(SAY_AGAIN);
      return decideVitals(context, state.log, first.items, source, nowMs, { correction: false, unsure: true });
    }
  }
}
