import type { Sourced } from "../protocol/protocol.ts";
import { selectAirway } from "./attempt.ts";
import type { CaseState } from "./caseState.ts";
import { earliestOf, givenOf } from "./given.ts";

/**
 * How long before induction values begin to count for the attempts, and how long after it they still do. It only looks back
 * on a case: nothing is prompted by it. It is no setting of the protocol, since figures of two services are only
 * comparable over the same window.
 */
export const INDUCTION_WINDOW: Sourced<{ readonly beforeS: number; readonly afterS: number }> = {
  value: { beforeS: 120, afterS: 600 },
  source: { reference: "common practice, no source", kind: "common-practice", primaryRead: false },
  choice: { instead: ["2, 30 or 60 min after the tube"], reason: "Published windows differ; raw times are kept." },
};

export const WINDOW_BEFORE_MS = INDUCTION_WINDOW.value.beforeS * 1000;

export type Window = { readonly fromMs: number; readonly toMs: number };

/** When the drugs went in; where none was recorded, the first attempt. */
export const selectInductionMs = (state: CaseState): number | undefined =>
  earliestOf(givenOf(state, ["induction", "muscleRelaxant"]))?.atMs ?? selectAirway(state).attempts[0]?.startedAtMs;

/** From shortly before induction until well after it, or until the tube that is in if that came later; Unix ms. */
export function selectInductionWindow(state: CaseState): (Window & { readonly inductionMs: number }) | undefined {
  const inductionMs = selectInductionMs(state);
  if (inductionMs === undefined) return undefined;
  const tubeMs = selectAirway(state).tube?.atMs ?? inductionMs;
  const toMs = Math.max(inductionMs + INDUCTION_WINDOW.value.afterS * 1000, tubeMs);
  return { fromMs: inductionMs - WINDOW_BEFORE_MS, inductionMs, toMs };
}
