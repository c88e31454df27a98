import {
  askRescue,
  NO_RESCUE,
  RESCUE_DENIED,
  RESCUE_ENDED,
  RESCUE_MEASURES,
  sayRescueStarted,
} from "../../../../language/sentences/rescue.ts";
import type { CaseState } from "../../../../log/caseState.ts";
import type { AffirmedFact, NewFact, Question } from "../../../../log/facts.ts";
import { reduceFacts } from "../../../../log/reduceFact.ts";
import { MEASURES_OVER, rescueRuns } from "../../../../log/rescue.ts";
import type { Protocol } from "../../../../protocol/protocol.ts";
import { asksRescue, confounderOf, newSign, seenSigns } from "../../../../rules/herniationWatch.ts";
import type { AppContext } from "../../../context.ts";
import { answered, recorded, type Decision } from "../../decision.ts";
import { recordStatements, type Source } from "../../recordStatement.ts";
import { stamp } from "../../stamp.ts";
import { askToRecord } from "../askCare.ts";

const startOf = (source: Source): readonly AffirmedFact[] => [{ type: "rescue.started", ...source }];

/** Herniation is no longer treated: neither as a rescue nor as a word that stands. */
function endRescue(log: CaseState, source: Source): Decision {
  const said = log.herniation?.present === true;
  if (!rescueRuns(log) && !said) return answered(NO_RESCUE);
  const ended: readonly NewFact[] = rescueRuns(log) ? [{ type: "rescue.ended", ...source }] : [];
  const noLonger = { vitals: [], findings: [], herniation: false };
  const unsaid = said ? recordStatements(log, [noLonger], source, [], ended.length) : [];
  return recorded(RESCUE_ENDED, [...ended, ...unsaid]);
}

/** "Start rescue" asks the one question before it; said while it runs, it asks whether to begin its time anew. */
export function decideRescue(
  { protocol }: AppContext,
  log: CaseState,
  change: "start" | "end",
  source: Source,
  nowMs: number,
): Decision {
  if (change === "end") return endRescue(log, source);
  const signs = seenSigns(log, protocol);
  const prompt = askRescue(signs, confounderOf(log, protocol, signs));
  return askToRecord(log, startOf(source), { prompt, source, nowMs });
}

/** Affirmed: the measures run, and their list is read. */
export function startRescue({ protocol }: AppContext, facts: readonly AffirmedFact[]): Decision {
  const forMs = protocol.timers.herniationMeasuresS.value * 1000;
  return recorded(sayRescueStarted(forMs), [...facts, { type: "list.read", mode: "all" }]);
}

/** A rescue that was asked about is not wanted; where its time was up, that ends it. */
export function denyRescue(log: CaseState, question: Question): Decision {
  const closed: NewFact = { type: "question.closed", questionId: question.id, outcome: "denied" };
  const isOver = rescueRuns(log) && log.care.prompts[MEASURES_OVER]?.key === String(log.care.rescue?.seq);
  if (!isOver) return answered(RESCUE_DENIED, [closed]);
  const { facts, ...rest } = endRescue(log, { heard: "negative", by: question.by });
  return { ...rest, facts: [closed, ...facts] };
}

function questionOf(log: CaseState, prompt: string, by: Source["by"], nowMs: number): NewFact {
  const source = { heard: RESCUE_MEASURES, by };
  const { facts } = askToRecord(log, startOf(source), { prompt, source, nowMs });
  const [asked] = facts.slice(-1);
  if (asked === undefined) throw new Error("a question that is not asked");
  return asked;
}

/** A sign asked for the rescue by itself; nobody has answered yet. */
export const isAskedOfSign = (log: CaseState, question: Question): boolean =>
  question.heard === RESCUE_MEASURES && asksRescue(question) && !rescueRuns(log);

/** Questions whose signs were taken back or are gone: they ask about nothing that is there. */
function unfounded(protocol: Protocol, before: CaseState, log: CaseState): readonly Question[] {
  const open = log.questions.filter((question) => isAskedOfSign(log, question));
  if (open.length === 0) return [];
  const now = seenSigns(log, protocol).map(({ sign }) => sign);
  return seenSigns(before, protocol).some(({ sign }) => now.includes(sign)) ? [] : open;
}

/**
 * The question that a new sign of herniation puts by itself, with its words, after the question of a sign that is gone was
 * closed.
 *
 * @param before the case before the utterance.
 * @param log    the case with all facts of the turn.
 */
export function askOfSign(
  protocol: Protocol,
  before: CaseState,
  log: CaseState,
  by: Source["by"],
  nowMs: number,
): { readonly facts: readonly NewFact[]; readonly text: string | undefined } {
  const closed = unfounded(protocol, before, log).map(({ id }): NewFact => ({
    type: "question.closed",
    questionId: id,
    outcome: "restated",
  }));
  const after = reduceFacts(stamp(log, closed, nowMs), log);
  const sign = newSign(before, after, protocol);
  if (sign === undefined) return { facts: closed, text: undefined };
  const text = askRescue(sign.signs, sign.thinkOf);
  return { facts: [...closed, questionOf(after, text, by, nowMs)], text };
}

/** The question that stands behind "Go on?" when the time is up. */
export const askToGoOn = (log: CaseState, text: string, nowMs: number): NewFact =>
  questionOf(log, text, "listener", nowMs);
