import type { Protocol } from "../../protocol/protocol.ts";
import type { StepEntry } from "../careState.ts";
import type { CaseState } from "../caseState.ts";
import { listSinceSeq, placeOf, placesOf, type ListId, type Place } from "./lists.ts";
import { isSatisfied } from "./satisfied.ts";

/** The answer that counts; none where it was given before its list began. */
export function answerOf(state: CaseState, { step, group }: Place): StepEntry | undefined {
  const answer = state.steps[step.id];
  return answer !== undefined && answer.seq > listSinceSeq(state, group.phase) ? answer : undefined;
}

/** Done, not needed, waived aloud, or answered by the record. "Later" is none of these. */
export function isClosed(state: CaseState, protocol: Protocol, place: Place, nowMs: number): boolean {
  const answer = answerOf(state, place)?.answer;
  return (answer !== undefined && answer !== "later") || isSatisfied(state, protocol, place.step, nowMs);
}

/**
 * The steps of a list that are open, in the order in which they are read: first those without an answer, as the protocol
 * has them; then those put off, the longest put off first.
 *
 * @param nowMs Unix ms.
 */
export function selectOpen(state: CaseState, protocol: Protocol, list: ListId, nowMs: number): readonly Place[] {
  const open = placesOf(protocol, list).filter((place) => !isClosed(state, protocol, place, nowMs));
  const putOffSeq = (place: Place): number => answerOf(state, place)?.seq ?? -1;
  // The sort is stable: steps without an answer stay in the order of the list.
  return open.toSorted((a, b) => putOffSeq(a) - putOffSeq(b));
}

/** The step that was called last and still waits for its answer: what a bare answer means. */
export function selectCalled(state: CaseState, protocol: Protocol, nowMs: number): Place | undefined {
  const place = state.calledStepId === undefined ? undefined : placeOf(protocol, state.calledStepId);
  return place !== undefined && !isClosed(state, protocol, place, nowMs) ? place : undefined;
}

/** The killer items of the preparation that are open: named aloud before the drugs go in. */
export const killersOpen = (state: CaseState, protocol: Protocol, nowMs: number): readonly Place[] =>
  selectOpen(state, protocol, "prepare", nowMs).filter(({ step }) => step.killer);
