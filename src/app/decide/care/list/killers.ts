import { NO_STEP_OPEN, sayKillerWarning, sayWaived } from "../../../../language/sentences/list.ts";
import { sayStepAnswer } from "../../../../language/sentences/step.ts";
import type { PhaseEntry } from "../../../../log/careState.ts";
import { PHASES } from "../../../../log/careFacts.ts";
import type { CaseState } from "../../../../log/caseState.ts";
import { linksOf } from "../../../../log/chains.ts";
import type { Fact, NewFact } from "../../../../log/facts.ts";
import type { Place } from "../../../../log/steps/lists.ts";
import { killersOpen, selectCalled } from "../../../../log/steps/openSteps.ts";
import type { Protocol } from "../../../../protocol/protocol.ts";
import { recorded, refused, type Decision } from "../../decision.ts";
import type { Source } from "../../recordStatement.ts";
import { passOverValues } from "./answerStep.ts";

const WARNING = "killers";
export const WARNING_ALERT_ID = "prompt:killers";

const isInduced = ({ phase }: PhaseEntry): boolean => PHASES.indexOf(phase) >= PHASES.indexOf("induce");

/** The entry with which the case came to the induction, or past it; none before, and none once it was taken back. */
export function inductionEntry({ care }: CaseState): PhaseEntry | undefined {
  let first: PhaseEntry | undefined;
  for (const entry of linksOf(care.phases)) {
    if (!isInduced(entry)) break;
    first = entry;
  }
  return first;
}

/**
 * The one warning of killer items that are open as the case comes to the induction: what to say, and the fact that it was
 * said.
 *
 * @param added the facts of this turn: only what brings the induction about is warned of.
 */
export function killersDue(
  log: CaseState,
  protocol: Protocol,
  added: readonly Fact[],
  nowMs: number,
): { readonly fact: NewFact; readonly text: string } | undefined {
  const entry = inductionEntry(log);
  if (entry === undefined || !added.some(({ id }) => id === entry.factId)) return undefined;
  // A patient who comes with the tube in place has no induction to be warned of.
  if (entry.phase !== "induce" && entry.phase !== "intubate") return undefined;
  const names = killersOpen(log, protocol, nowMs).map(({ step }) => step.name);
  if (names.length === 0) return undefined;
  const text = sayKillerWarning(names);
  return { text, fact: { type: "prompt.announced", promptId: WARNING, key: entry.factId, text } };
}

/** The killer items just warned of that are still open; none once a step was called since. */
function warnedOf(log: CaseState, protocol: Protocol, nowMs: number): readonly Place[] {
  const warning = log.care.prompts[WARNING];
  if (warning === undefined || warning.key !== inductionEntry(log)?.factId) return [];
  return warning.seq > (log.lastCall?.seq ?? -1) ? killersOpen(log, protocol, nowMs) : [];
}

/** "Waive, no time": the killer items just warned of, else the step that was called. */
export function waive(
  log: CaseState,
  protocol: Protocol,
  reason: string | undefined,
  source: Source,
  nowMs: number,
): Decision {
  const warned = warnedOf(log, protocol, nowMs);
  const called = selectCalled(log, protocol, nowMs);
  const places = warned.length > 0 ? warned : called === undefined ? [] : [called];
  const [first, ...others] = places;
  if (first === undefined) return refused(NO_STEP_OPEN);
  const given = { answer: "waived" as const, ...(reason === undefined ? {} : { reason }) };
  const facts = places.map(({ step }): NewFact => ({ type: "step.answered", stepId: step.id, ...given, ...source }));
  const text =
    warned.length === 0 && others.length === 0
      ? sayStepAnswer(first.step, given)
      : sayWaived(
          places.map(({ step }) => step.name),
          reason,
        );
  return recorded(text, [...passOverValues(log), ...facts]);
}
