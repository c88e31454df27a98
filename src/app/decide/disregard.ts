import { sayCareFact } from "../../language/sentences/careFact.ts";
import { sayFluidTotal } from "../../language/sentences/fluid.ts";
import { sayTotalLeft } from "../../language/sentences/given.ts";
import { sayWaived } from "../../language/sentences/list.ts";
import { sayReading } from "../../language/sentences/reading.ts";
import { sentences } from "../../language/sentences/sentence.ts";
import { sayStepAnswer } from "../../language/sentences/step.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { StepEntry, StrikableCare } from "../../log/careState.ts";
import { selectLastStatement } from "../../log/statements.ts";
import { strikeCare } from "../../log/strikeCare.ts";
import { selectFluidTotal, selectTotal } from "../../log/totals.ts";
import { findMedicine } from "../../protocol/findMedicine.ts";
import { findStep } from "../../protocol/findStep.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { findFluid } from "../../rules/fluidTotal.ts";
import { recorded, type Decision } from "./decision.ts";

/** What "disregard" would strike. */
export type Newest = {
  readonly seq: number;
  readonly targetIds: readonly string[];
  /** As it is read back; none for a step that this protocol does not know. */
  readonly words: string | undefined;
  /** Where striking it leaves the case, where that is to be said. */
  readonly leaves?: string;
};

/** Killer items waived in one breath are taken back in one. */
function waivedWith(protocol: Protocol, log: CaseState, newest: StepEntry): Newest | undefined {
  const together = Object.entries(log.steps).filter(
    ([, entry]) => entry.answer === "waived" && entry.atMs === newest.atMs && entry.heard === newest.heard,
  );
  if (newest.answer !== "waived" || together.length < 2) return undefined;
  const names = together.flatMap(([stepId]) => findStep(protocol, stepId)?.name ?? []);
  const targetIds = together.map(([, { factId }]) => factId);
  return { seq: newest.seq, targetIds, words: sayWaived(names, newest.reason), leaves: "The steps are open again." };
}

function newestStep(protocol: Protocol, log: CaseState, stepId: string, entry: StepEntry): Newest {
  const step = findStep(protocol, stepId);
  const before = step && entry.earlier && sayStepAnswer(step, entry.earlier);
  const leaves = before ?? "The step is open again.";
  const alone = { seq: entry.seq, targetIds: [entry.factId], words: step && sayStepAnswer(step, entry), leaves };
  return waivedWith(protocol, log, entry) ?? alone;
}

/** Where a total is left by taking this back; nothing where there is none to say. */
export function leavesAfter(
  protocol: Protocol,
  log: CaseState,
  fact: StrikableCare,
  factId: string,
): string | undefined {
  const { care } = log;
  const without = { care: strikeCare(care, factId) };
  if (fact.type === "drug.given") {
    const name = findMedicine(protocol, fact.drugId)?.spokenName ?? fact.drugId;
    return sayTotalLeft(name, selectTotal(without, fact.drugId));
  }
  if (fact.type !== "fluid.given") return undefined;
  const fluid = findFluid(protocol, fact.fluidId) ?? { label: fact.fluidId };
  return sayFluidTotal(fluid, selectFluidTotal(without, fact.fluidId).volumeMl, undefined);
}

/** The newest entry of the case: the last reading, the last answer to a step, or the last that was done for the patient. */
export function newestEntry(protocol: Protocol, log: CaseState): Newest | undefined {
  const last = selectLastStatement(log);
  const { taken } = log.care;
  const [step] = Object.entries(log.steps).toSorted(([, a], [, b]) => b.seq - a.seq);
  if (taken !== undefined && taken.seq > Math.max(last?.seq ?? -1, step?.[1].seq ?? -1)) {
    const { fact, factId } = taken;
    const nameOf = (id: string): string =>
      findMedicine(protocol, id)?.spokenName ?? findFluid(protocol, id)?.label ?? id;
    const leaves = leavesAfter(protocol, log, fact, factId);
    const words = sayCareFact(fact, nameOf);
    return { seq: taken.seq, targetIds: [factId], words, ...(leaves !== undefined && { leaves }) };
  }
  if (step !== undefined && (last === undefined || step[1].seq > last.seq)) return newestStep(protocol, log, ...step);
  return last && { seq: last.seq, targetIds: last.factIds, words: sayReading(last.statement, protocol.region) };
}

/** Takes it back and says so. */
export const strikeEntry = ({ targetIds, words, leaves }: Newest): Decision =>
  recorded(sentences(words === undefined ? "Disregarded" : `Disregarded: ${words}`, leaves), [
    { type: "entry.struck", targetIds, reason: "disregarded" },
  ]);
