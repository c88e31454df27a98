import {
  FAILED_AIRWAY,
  KILLERS_COMPLETE,
  LIST_NOT_READ,
  LIST_PAUSED,
  sayComplete,
} from "../../../../language/sentences/list.ts";
import { sentences } from "../../../../language/sentences/sentence.ts";
import type { CaseState } from "../../../../log/caseState.ts";
import type { NewFact } from "../../../../log/facts.ts";
import { reduceFacts } from "../../../../log/reduceFact.ts";
import { selectList, selectNextStep } from "../../../../log/steps/currentList.ts";
import { selectOpen } from "../../../../log/steps/openSteps.ts";
import type { AppContext } from "../../../context.ts";
import { answered, type Decision } from "../../decision.ts";
import type { Source } from "../../recordStatement.ts";
import { stamp } from "../../stamp.ts";
import { passOverValues } from "./answerStep.ts";

/** What the list does and says. */
export type ListWord = { readonly facts: readonly NewFact[]; readonly text: string };

const after = (log: CaseState, facts: readonly NewFact[], nowMs: number): CaseState =>
  reduceFacts(stamp(log, facts, nowMs), log);

const spoken = ({ facts, text }: ListWord): Decision => ({ ...answered(text, facts), speaksOfList: true });

/**
 * Begins to read a list by itself: the one that is current after what `log` holds, from its first open step. For a rescue,
 * `log` must hold its start.
 *
 * @param mode the whole list, or its killer items alone.
 */
export function startList({ protocol }: AppContext, log: CaseState, mode: "all" | "killer", nowMs: number): ListWord {
  const read: NewFact = { type: "list.read", mode };
  const reading = after(log, [read], nowMs);
  const next = selectNextStep(reading, protocol, nowMs);
  if (next !== undefined)
    return { facts: [read, { type: "step.called", stepId: next.step.id }], text: next.step.challenge };
  const off: readonly NewFact[] = log.care.list === "off" ? [] : [{ type: "list.read", mode: "off" }];
  const text = mode === "killer" ? KILLERS_COMPLETE : sayComplete(selectList(reading, protocol, nowMs));
  return { facts: off, text };
}

/** "Read the list", "killer items". */
export function readList(context: AppContext, log: CaseState, mode: "all" | "killer", nowMs: number): Decision {
  const passedOver = passOverValues(log);
  const { facts, text } = startList(context, after(log, passedOver, nowMs), mode, nowMs);
  return spoken({ facts: [...passedOver, ...facts], text });
}

/** "Pause the list": nothing is read by itself any more; "next" still reads. */
export const pauseList = ({ care }: CaseState): Decision =>
  spoken(
    care.list === "off"
      ? { facts: [], text: LIST_NOT_READ }
      : { facts: [{ type: "list.read", mode: "off" }], text: LIST_PAUSED },
  );

/** "Failed airway": it is in the record, and its steps are read in their order. */
export function callFailure(context: AppContext, log: CaseState, source: Source, nowMs: number): Decision {
  const called: readonly NewFact[] = [...passOverValues(log), { type: "failure.called", ...source }];
  const failed = after(log, called, nowMs);
  const hasList = selectOpen(failed, context.protocol, "failedAirway", nowMs).length > 0;
  const { facts, text } = hasList ? startList(context, failed, "all", nowMs) : { facts: [], text: undefined };
  return {
    ...answered(sentences(FAILED_AIRWAY, text), [...called, ...facts]),
    outcome: "recorded",
    speaksOfList: true,
  };
}

/** "Next": reads the next open step of the list that counts now. */
export function callNext({ protocol }: AppContext, log: CaseState, nowMs: number): Decision {
  const passedOver = passOverValues(log);
  const next = selectNextStep(log, protocol, nowMs);
  if (next === undefined) return spoken({ facts: passedOver, text: sayComplete(selectList(log, protocol, nowMs)) });
  const { id, challenge } = next.step;
  return spoken({ facts: [...passedOver, { type: "step.called", stepId: id }], text: challenge });
}
