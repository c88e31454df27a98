import type { Command } from "../../language/intent.ts";
import { sayHelp } from "../../language/sentences/help.ts";
import { sayReading } from "../../language/sentences/reading.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { NewFact } from "../../log/facts.ts";
import { selectLastStatement } from "../../log/statements.ts";
import { selectNextStep } from "../../log/steps.ts";
import type { AppContext, AppState } from "../context.ts";
import { decideAffirm, decideNegative } from "./decideAnswer.ts";
import { answered, recorded, type Decision } from "./decision.ts";

function disregard(log: CaseState): Decision {
  const [question] = log.questions;
  if (question !== undefined)
    return answered("Disregarded.", [{ type: "question.closed", questionId: question.id, outcome: "denied" }]);
  const last = selectLastStatement(log);
  const [step] = Object.values(log.steps).sort((a, b) => b.atMs - a.atMs);
  if (step !== undefined && (last === undefined || step.atMs >= last.atMs)) {
    return recorded("Disregarded. The step is open again.", [
      { type: "entry.struck", targetIds: [step.factId], reason: "disregarded" },
    ]);
  }
  if (last === undefined) return answered("Nothing to disregard.");
  return recorded(`Disregarded: ${sayReading(last.statement)}.`, [
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
      return decideAffirm(log);
    case "negative":
      return decideNegative(log);
    case "sayAgain":
      return answered(log.questions[0]?.prompt ?? state.lastSaid ?? "Nothing said yet.");
    case "disregard":
      return disregard(log);
    case "standBy":
      return answered("Standing by.", [
        { type: "standBy.started", untilMs: nowMs + context.protocol.timers.standByS.value * 1000 },
      ]);
    case "status":
      return { facts: [], outcome: "answered", reply: { kind: "status" } };
    case "readBack": {
      const last = selectLastStatement(log);
      return answered(last === undefined ? "Nothing recorded yet." : `${sayReading(last.statement)}.`);
    }
    case "next":
      return next(context, log);
    case "whatCanISay":
      return answered(sayHelp(log.questions.length > 0));
  }
}
