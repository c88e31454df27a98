import { KILLERS_COMPLETE, sayBackTo, sayComplete, sayPutOff } from "../../../../language/sentences/list.ts";
import type { CaseState } from "../../../../log/caseState.ts";
import type { NewFact } from "../../../../log/facts.ts";
import { selectList, selectToRead } from "../../../../log/steps/currentList.ts";
import type { ListId } from "../../../../log/steps/lists.ts";
import { answerOf, selectCalled, selectOpen } from "../../../../log/steps/openSteps.ts";
import type { Protocol } from "../../../../protocol/protocol.ts";
import { isStandingBy } from "../../../../rules/standBy.ts";
import type { AppContext } from "../../../context.ts";
import type { Decision } from "../../decision.ts";
import { inductionEntry } from "./killers.ts";
import type { ListWord } from "./readList.ts";

const SILENT: ListWord = { facts: [], text: "" };
const OFF: NewFact = { type: "list.read", mode: "off" };

/** Nothing is read while a question of ours waits, or while standing by. */
const isHeld = (log: CaseState, nowMs: number): boolean => log.questions.length > 0 || isStandingBy(log, nowMs);

/** Naming a step is calling it: the record keeps what was said last. */
const call = (stepId: string, text: string): ListWord => ({ facts: [{ type: "step.called", stepId }], text });

/** How the reading of a list ends: all is closed, or what is left was put off while it was read. */
function end(log: CaseState, protocol: Protocol, list: ListId, nowMs: number): ListWord {
  const isKiller = log.care.list === "killer";
  const left = selectOpen(log, protocol, list, nowMs).filter(({ step }) => !isKiller || step.killer);
  const complete = isKiller ? KILLERS_COMPLETE : sayComplete(list);
  return { facts: [OFF], text: left.length === 0 ? complete : sayPutOff(left.map(({ step }) => step.name)) };
}

/** What the list says next: the step that waits, else the next one, else how it ends. */
function goOn(log: CaseState, protocol: Protocol, listWas: ListId, nowMs: number): ListWord {
  const list = selectList(log, protocol, nowMs);
  // A rescue or a failed airway is over, by its steps or by a word: what was read before is not begun by itself.
  if (list !== listWas && (listWas === "rescue" || listWas === "failedAirway")) {
    const isDone = selectOpen(log, protocol, listWas, nowMs).length === 0;
    return isDone ? end(log, protocol, listWas, nowMs) : { facts: [OFF], text: "" };
  }
  const toRead = selectToRead(log, protocol, nowMs);
  const called = selectCalled(log, protocol, nowMs);
  if (called !== undefined && toRead.some(({ step }) => step.id === called.step.id))
    return call(called.step.id, sayBackTo(called.step.name));
  const next = toRead.find((place) => (answerOf(log, place)?.seq ?? -1) < log.care.listSeq);
  return next === undefined ? end(log, protocol, list, nowMs) : call(next.step.id, next.step.challenge);
}

/** The last open step of a list that is not read by itself was answered. */
function completedBy(before: CaseState, after: CaseState, protocol: Protocol, decision: Decision, nowMs: number) {
  if (!decision.facts.some(({ type }) => type === "step.answered")) return SILENT;
  const list = selectList(before, protocol, nowMs);
  const isOver = selectOpen(after, protocol, list, nowMs).length === 0;
  const wasOpen = selectOpen(before, protocol, list, nowMs).length > 0;
  return isOver && wasOpen ? { facts: [], text: sayComplete(list) } : SILENT;
}

/**
 * What the list adds to a reply, after each utterance: the next challenge after an answer, the step that waits after
 * anything else. While a question waits or nothing was understood it adds nothing.
 *
 * @param after with all facts of the turn, those of the rules too.
 */
export function listAfter(
  { protocol }: AppContext,
  before: CaseState,
  after: CaseState,
  decision: Decision,
  nowMs: number,
): ListWord {
  if (decision.outcome === "ignored" || decision.outcome === "refused" || decision.speaksOfList) return SILENT;
  if (after.care.list === "off")
    return isHeld(after, nowMs) ? SILENT : completedBy(before, after, protocol, decision, nowMs);
  const listWas = selectList(before, protocol, nowMs);
  const isInduction = inductionEntry(after) !== undefined && inductionEntry(before) === undefined;
  // The drugs go in: the preparation read over the attempt would only be in the way. The warning named what is open.
  if (isInduction && listWas === "prepare") return { facts: [OFF], text: "" };
  return isHeld(after, nowMs) ? SILENT : goOn(after, protocol, listWas, nowMs);
}

/**
 * What the list says by itself as time passes: it is taken up again after standing by, after a question that nobody
 * answered, after a high alert, and when time itself has answered the step that waited.
 *
 * @param interrupted a high alert has just cut in.
 */
export function listDue(
  { protocol }: AppContext,
  before: CaseState,
  after: CaseState,
  interrupted: boolean,
  nowMs: number,
): ListWord {
  if (after.care.list === "off" || isHeld(after, nowMs)) return SILENT;
  const called = selectCalled(after, protocol, nowMs);
  const stoodBy = after.standByUntilMs !== undefined && (after.lastCall?.atMs ?? -Infinity) < after.standByUntilMs;
  if (called !== undefined && !interrupted && !stoodBy && before.questions.length === 0) return SILENT;
  return goOn(after, protocol, selectList(before, protocol, nowMs), nowMs);
}
