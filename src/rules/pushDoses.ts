import type { StrengthEntry } from "../log/careState.ts";
import type { CaseState } from "../log/caseState.ts";
import { linksOf } from "../log/chains.ts";
import { findMedicine, type Medicine } from "../protocol/findMedicine.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { planDrug } from "./drugPlan.ts";

/** A vasopressor that is drawn up to give from at once, and the strength it was drawn up at. */
export type PushDose = { readonly medicine: Medicine; readonly drawnUp: StrengthEntry };

/** In more than this a step of the protocol takes a pressor for a bag; the strictest of them, if any says so. */
const mostMl = ({ groups }: Protocol): number =>
  Math.min(
    ...groups.flatMap(({ steps }) =>
      steps.flatMap(({ satisfiedBy: by }) =>
        by?.kind === "strength-affirmed" && by.drugClass === "vasopressor" ? (by.mostMl ?? []) : [],
      ),
    ),
  );

/** Also one whose size is not known yet: for want of a weight the syringe is no less drawn up. */
function hasDose(state: CaseState, protocol: Protocol, { id, doses }: Medicine, nowMs: number): boolean {
  if (doses.length === 0) return false;
  const plan = planDrug(state, protocol, id, nowMs);
  return plan.ok || plan.error.kind === "missing" || plan.error.kind === "in-question";
}

/**
 * The push doses that lie ready: each vasopressor of which the protocol has a dose at once for this patient, and a strength
 * was affirmed that is no bag. An affirmed bag does not hide the syringe that was affirmed before it.
 *
 * @param nowMs Unix ms.
 *
 * Not for: whether one may be given again yet.
 */
export const pushDoses = (state: CaseState, protocol: Protocol, nowMs: number): readonly PushDose[] => {
  const upToMl = mostMl(protocol);
  return Object.values(state.care.strengths).flatMap((newest) => {
    const medicine = newest.drugClass === "vasopressor" ? findMedicine(protocol, newest.drugId) : undefined;
    const drawnUp = [...linksOf(newest)].find(({ strength }) => strength.volumeMl <= upToMl);
    if (medicine === undefined || drawnUp === undefined || !hasDose(state, protocol, medicine, nowMs)) return [];
    return [{ medicine, drawnUp }];
  });
};
