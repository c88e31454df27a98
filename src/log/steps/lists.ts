import type { Protocol, Step, StepGroup } from "../../protocol/protocol.ts";
import type { CaseState } from "../caseState.ts";
import { isAfterTube } from "../phase.ts";
import { tubeSinceSeq } from "./tubeSince.ts";

/** The lists of the protocol, each made of the groups of one phase. */
export type ListId = StepGroup["phase"];

/** A step with where it stands. */
export type Place = { readonly step: Step; readonly group: StepGroup };

/** The steps of one list in the order of the protocol; none where it has no such group. */
export const placesOf = ({ groups }: Protocol, list: ListId): readonly Place[] =>
  groups.filter(({ phase }) => phase === list).flatMap((group) => group.steps.map((step) => ({ step, group })));

/** The step with this id and its group; `undefined` when this protocol has none. */
export const placeOf = ({ groups }: Protocol, stepId: string): Place | undefined =>
  groups.flatMap((group) => group.steps.map((step) => ({ step, group }))).find(({ step }) => step.id === stepId);

/** A failed airway was called, and no tube was confirmed since. */
export function failureRuns(state: CaseState): boolean {
  const { failure, phases } = state.care;
  if (failure === undefined) return false;
  return !(isAfterTube(state) && phases !== undefined && phases.seq > failure.seq);
}

/** An answer given before its list began is an answer to another rescue, another tube: it no longer counts. */
export function listSinceSeq({ care }: CaseState, list: ListId): number {
  switch (list) {
    case "prepare":
      return -1;
    case "afterTube":
      return tubeSinceSeq(care) ?? -1;
    case "rescue":
      return care.rescue?.runs === true ? care.rescue.seq : -1;
    case "failedAirway":
      return care.failure?.seq ?? -1;
  }
}
