import type { Command } from "../../language/intent.ts";
import { askDisregard } from "../../language/sentences/act.ts";
import { sayClocks } from "../../language/sentences/clock.ts";
import { sayHelp } from "../../language/sentences/help.ts";
import { sayWhichProtocol } from "../../language/sentences/protocol.ts";
import { sayReading } from "../../language/sentences/reading.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { NewFact, Question } from "../../log/facts.ts";
import { selectLastStatement } from "../../log/statements.ts";
import { clocksRunning } from "../../rules/clocks.ts";
import type { AppContext, AppState } from "../context.ts";
import { askQuestion } from "./askQuestion.ts";
import { isAskedOfSign } from "./care/course/decideRescue.ts";
import { passOverValues } from "./care/list/answerStep.ts";
import { callNext } from "./care/list/readList.ts";
import { closedBy, standBy, takeAct } from "./decideAct.ts";
import { decideAffirm, decideNegative } from "./decideAnswer.ts";
import { answered, type Decision } from "./decision.ts";
import { newestEntry, strikeEntry, type Newest } from "./disregard.ts";
import type { Source } from "./recordStatement.ts";

function disregardAnswer({ protocol }: AppContext, log: CaseState): Decision {
  const newest = newestEntry(protocol, log);
  const passedOver = passOverValues(log);
  if (newest === undefined) return answered("Nothing to disregard.", passedOver);
  const { facts, ...rest } = strikeEntry(newest);
  return { ...rest, facts: [...passedOver, ...facts] };
}

function disregardSign({ protocol }: AppContext, log: CaseState, { id }: Question): Decision {
  const newest = newestEntry(protocol, log);
  const closed: NewFact = { type: "question.closed", questionId: id, outcome: "denied" };
  const { facts, ...rest } = newest === undefined ? answered("Nothing to disregard.") : strikeEntry(newest);
  return { ...rest, facts: [closed, ...facts] };
}

/** Something was said to the voice since: nobody thinks of the older entry now, so it is named and asked about. */
function askOlder(log: CaseState, { targetIds, words = "" }: Newest, source: Source, nowMs: number): Decision {
  const acts = [{ kind: "disregard", targetIds }] as const;
  return askQuestion(log, { prompt: askDisregard(words), source, nowMs }, { reason: "always-confirm", acts }, []);
}

function disregard(context: AppContext, log: CaseState, source: Source, nowMs: number): Decision {
  const [question] = log.questions;
  const [act] = question?.acts ?? [];
  // Said again to our "Disregard …?", it is the answer to it.
  if (question !== undefined && act?.kind === "disregard") return takeAct(context, log, question, act, nowMs);
  // The value of a step need not be told: what was entered last is the answer to the step.
  if (question?.wants?.kind === "stepValue") return disregardAnswer(context, log);
  // A reading asked for the rescue by itself: it is the reading that was said last, and that is taken back with it.
  if (question !== undefined && isAskedOfSign(log, question)) return disregardSign(context, log, question);
  if (question !== undefined)
    return answered(`Disregarded: ${question.heard}.`, [
      { type: "question.closed", questionId: question.id, outcome: "denied" },
    ]);
  const newest = newestEntry(context.protocol, log);
  if (newest === undefined) return answered("Nothing to disregard.");
  return newest.seq < (log.talk.saidAtSeq ?? -1) ? askOlder(log, newest, source, nowMs) : strikeEntry(newest);
}

/** What each spoken command does. */
export function decideCommand(
  context: AppContext,
  state: AppState,
  command: Command,
  source: Source,
  nowMs: number,
): Decision {
  const { log } = state;
  switch (command) {
    case "affirm":
      return decideAffirm(context, log, nowMs);
    case "negative":
      return decideNegative(log);
    case "sayAgain":
      return {
        ...answered(log.questions[0]?.prompt ?? state.lastSaid ?? "Nothing said yet."),
        speaksOfList: true,
      };
    case "disregard":
      return disregard(context, log, source, nowMs);
    case "standBy": {
      const { facts, ...rest } = standBy(context, nowMs);
      return { ...rest, facts: [...closedBy(log, [{ kind: "standBy" }]), ...facts] };
    }
    case "status":
      return { facts: [], outcome: "answered", reply: { kind: "status" } };
    case "margin":
    case "everything":
      return { facts: [], outcome: "answered", reply: { kind: command } };
    case "readBack": {
      const last = selectLastStatement(log);
      return answered(
        last === undefined ? "Nothing recorded yet." : `${sayReading(last.statement, context.protocol.region)}.`,
      );
    }
    case "clocks":
      return answered(sayClocks(clocksRunning(log, context.protocol, nowMs), nowMs));
    case "next":
      return callNext(context, log, nowMs);
    case "whichProtocol":
      return answered(sayWhichProtocol(context.protocol, context.mark));
    case "hearMe":
    case "forgetVoice":
      return answered("Only where there is a microphone.");
    case "notNow":
      return answered(log.questions[0]?.prompt ?? "Nothing to put off.");
    case "whatCanISay":
      return answered(sayHelp(log.questions[0]));
  }
}
