import type { GivenEntry } from "../log/careState.ts";
import type { CaseState } from "../log/caseState.ts";
import { givenOf, latestOf } from "../log/given.ts";
import type { Drug, Protocol } from "../protocol/protocol.ts";

/** A paralytic that still acts, with the drug it is. */
export type Paralysis = { readonly given: GivenEntry; readonly drug: Drug };

const drugOf = ({ drugs }: Protocol, drugId: string): Drug | undefined => drugs.find(({ id }) => id === drugId);

/** Whether it still acts then; without a duration in the protocol it always does. A clock set back makes nothing act less. */
function acts({ durationS }: Drug, { atMs }: GivenEntry, thenMs: number): boolean {
  return durationS === undefined || Math.max(0, thenMs - atMs) < durationS.value.high * 1000;
}

/** A moment of the case: its time, Unix ms, and the number of the fact of which it is asked; none: now. */
type Moment = { readonly atMs: number; readonly seq?: number };

/** The paralytic that acts at this moment, the one given last. */
export function paralysisAt(state: CaseState, protocol: Protocol, { atMs, seq }: Moment): Paralysis | undefined {
  const before = [...givenOf(state, ["muscleRelaxant"])].filter((given) => given.seq < (seq ?? Infinity));
  const acting = before.flatMap((given): readonly (Paralysis & { readonly seq: number })[] => {
    const drug = drugOf(protocol, given.drugId);
    return drug !== undefined && acts(drug, given, atMs) ? [{ given, drug, seq: given.seq }] : [];
  });
  return latestOf(acting);
}
