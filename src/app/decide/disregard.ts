import { sayReading } from "../../language/sentences/reading.ts";
import { sentences } from "../../language/sentences/sentence.ts";
import { sayStepAnswer } from "../../language/sentences/step.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { StepEntry } from "../../log/careState.ts";
import { selectLastStatement } from "../../log/statements.ts";
import { findStep } from "../../protocol/findStep.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { recorded, type Decision } from "./decision.ts";

/** What "disregard" would strike. */
type Newest = {
  readonly targetIds: readonly string[];
  /** As it is read back; none for a step that this protocol does not know. */
  readonly words: string | undefined;
  /** Where striking it leaves the case, where that is to be said. */
  readonly leaves?: string;
};

function newestStep(protocol: Protocol, stepId: string, entry: StepEntry): Newest {
  const step = findStep(protocol, stepId);
  const before = step && entry.earlier && sayStepAnswer(step, entry.earlier.answer);
  const leaves = before ?? "The step is open again.";
  return { targetIds: [entry.factId], words: step && sayStepAnswer(step, entry.answer), leaves };
}

/** The newest entry of the case: the last reading, or the last answer to a step. */
export function newestEntry(protocol: Protocol, log: CaseState): Newest | undefined {
  const last = selectLastStatement(log);
  const [step] = Object.entries(log.steps).toSorted(([, a], [, b]) => b.seq - a.seq);
  if (step !== undefined && (last === undefined || step[1].seq > last.seq)) return newestStep(protocol, ...step);
  return last && { targetIds: last.factIds, words: sayReading(last.statement, protocol.region) };
}

/** Takes it back and says so. */
export const strikeEntry = ({ targetIds, words, leaves }: Newest): Decision =>
  recorded(sentences(words === undefined ? "Disregarded" : `Disregarded: ${words}`, leaves), [
    { type: "entry.struck", targetIds, reason: "disregarded" },
  ]);
