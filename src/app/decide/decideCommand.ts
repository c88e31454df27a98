import type { Command } from "../../language/intent.ts";
import { sayHelp } from "../../language/sentences/help.ts";
import { sayWhichProtocol } from "../../language/sentences/protocol.ts";
import { sayReading } from "../../language/sentences/reading.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { NewFact } from "../../log/facts.ts";
import { selectLastStatement } from "../../log/statements.ts";
import { selectNextStep } from "../../log/steps.ts";
import type { AppContext, AppState } from "../context.ts";
import { closedBy, standBy, takeAct } from "./decideAct.ts";
import { decideAffirm, decideNegative } from "./decideAnswer.ts";
import { answered, type Decision } from "./decision.ts";
import { newestEntry, strikeEntry } from "./disregard.ts";

function disregard(context: AppContext, log: CaseState, nowMs: number): Decision {
  const [question] = log.questions;
  const [act] = question?.acts ?? [];
  // Said again to our "Disregard …?", it is the answer to it.
  if (question !== undefined && act?.kind === "disregard") return takeAct(context, log, question, act, nowMs);
  if (question !== undefined)
    return answered(`Disregarded: ${question.heard}.`, [
      { type: "question.closed", questionId: question.id, outcome: "denied" },
    ]);
  const newest = newestEntry(context.protocol, log);
  return newest === undefined ? answered("Nothing to disregard.") : strikeEntry(newest);
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
      return disregard(context, log, nowMs);
    case "standBy": {
      const { facts, ...rest } = standBy(context, nowMs);
      return { ...rest, facts: [...closedBy(log, [{ kind: "standBy" }]), ...facts] };
    }
    case "status":
      return { facts: [], outcome: "answered", reply: { kind: "status" } };
    case "readBack": {
      const last = selectLastStatement(log);
      return answered(
        last === undefined ? "Nothing recorded yet." : `${sayReading(last.statement, context.protocol.region)}.`,
      );
    }
    case "clocks":
      return answered("No clock runs.");
    case "next":
      return next(context, log);
    case "whichProtocol":
      return answered(sayWhichProtocol(context.protocol, context.mark));
    case "hearMe":
    case "forgetVoice":
      return answered("Only where there is a microphone.");
    case "notNow":
      return answered(log.questions[0]?.prompt ?? "Nothing to put off.");
    case "whatCanISay":
      return answered(sayHelp(log.questions.length > 0));
  }
}
