import type { Command } from "../../language/intent.ts";
import { sayHelp } from "../../language/sentences/help.ts";
import { sayWhichProtocol } from "../../language/sentences/protocol.ts";
import { sayReading } from "../../language/sentences/reading.ts";
import { sayStepAnswer } from "../../language/sentences/step.ts";
import type { CaseState, StepEntry } from "../../log/caseState.ts";
import type { NewFact } from "../../log/facts.ts";
import { selectLastStatement } from "../../log/statements.ts";
import { selectNextStep } from "../../log/steps.ts";
import { findStep } from "../../protocol/findStep.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import type { AppContext, AppState } from "../context.ts";
import { decideAffirm, decideNegative } from "./decideAnswer.ts";
import { answered, recorded, type Decision } from "./decision.ts";

/** Takes back the last answer to a step and says where that leaves it. */
function disregardStep(protocol: Protocol, stepId: string, entry: StepEntry): Decision {
  const step = findStep(protocol, stepId);
  const said = step === undefined ? "Disregarded." : `Disregarded: ${sayStepAnswer(step, entry.answer)}`;
  const before = step && entry.earlier && sayStepAnswer(step, entry.earlier.answer);
  return recorded(`${said} ${before ?? "The step is open again."}`, [
    { type: "entry.struck", targetIds: [entry.factId], reason: "disregarded" },
  ]);
}

function disregard({ protocol }: AppContext, log: CaseState): Decision {
  const [question] = log.questions;
  if (question !== undefined)
    return answered(`Disregarded: ${question.heard}.`, [
      { type: "question.closed", questionId: question.id, outcome: "denied" },
    ]);
  const last = selectLastStatement(log);
  const [step] = Object.entries(log.steps).toSorted(([, a], [, b]) => b.seq - a.seq);
  if (step !== undefined && (last === undefined || step[1].seq > last.seq)) return disregardStep(protocol, ...step);
  if (last === undefined) return answered("Nothing to disregard.");
  return recorded(`Disregarded: ${sayReading(last.statement, protocol.region)}.`, [
    { type: "entry.struck", targetIds: last.factIds, reason: "disregarded" },
  ]);
}

function next({ protocol }: AppContext, log: CaseState): Decision {
  const open = selectNextStep(log, protocol);
  if (open === undefined) return answered("Preparation complete.");
  const called: readonly NewFact[] =
    log.calledStepId === open.step.id ? [] : [{ type: "step.called", stepId: open.step.id }];
  return answered(open.step.challenge, called);
}

/** What each spoken command does. */
export function decideCommand(context: AppContext, state: AppState, command: Command, nowMs: number): Decision {
  const { log } = state;
  switch (command) {
    case "affirm":
      return decideAffirm(context, log, nowMs);
    case "negative":
      return decideNegative(log);
    case "sayAgain":
      return answered(log.questions[0]?.prompt ?? state.lastSaid ?? "Nothing said yet.");
    case "disregard":
      return disregard(context, log);
    case "standBy":
      return answered("Standing by.", [
        { type: "standBy.started", untilMs: nowMs + context.protocol.timers.standByS.value * 1000 },
      ]);
    case "status":
      return { facts: [], outcome: "answered", reply: { kind: "status" } };
    case "readBack": {
      const last = selectLastStatement(log);
      return answered(
        last === undefined ? "Nothing recorded yet." : `${sayReading(last.statement, context.protocol.region)}.`,
      );
    }
    case "next":
      return next(context, log);
    case "whichProtocol":
      return answered(sayWhichProtocol(context.protocol, context.mark));
    case "whatCanISay":
      return answered(sayHelp(log.questions.length > 0));
  }
}
