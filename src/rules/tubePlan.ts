import { kg, years } from "../core/quantities.ts";
import type { Result } from "../core/result.ts";
import { fail, ok } from "../core/result.ts";
import { adultTube, childTube, type AdultTube, type ChildTube } from "../core/tubes.ts";
import { weightFor } from "../core/weightFor.ts";
import type { CaseState } from "../log/caseState.ts";
import { selectLatest } from "../log/selectors.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { patientBody } from "./patientBody.ts";

export type TubePlan = ({ readonly kind: "adult" } & AdultTube) | ({ readonly kind: "child" } & ChildTube);
export type TubePlanError =
  { readonly kind: "missing"; readonly missing: "age" | "sex" } | { readonly kind: "no-tube" };

/** The tube that the protocol has for this patient; or what must be said first. */
export function planTube(state: CaseState, protocol: Protocol): Result<TubePlan, TubePlanError> {
  const { tubes } = protocol;
  const spareStepMm = tubes.spareStepMm.value;
  const body = patientBody(state, protocol);
  if (!body.isChild) {
    if (state.sex === undefined) return fail({ kind: "missing", missing: "sex" });
    const rulesOf = ({ sizeMm, depthCm }: typeof tubes.female) => ({ sizeMm: sizeMm.value, depthCm: depthCm.value });
    const rules = { female: rulesOf(tubes.female), male: rulesOf(tubes.male), spareStepMm };
    const tube = adultTube(state.sex.sex, rules);
    return tube.ok ? ok({ kind: "adult", ...tube.value }) : fail({ kind: "no-tube" });
  }
  const age = years(selectLatest(state, "age")?.value ?? Number.NaN);
  if (!age.ok) return fail({ kind: "missing", missing: "age" });
  const weight = weightFor("actual", body);
  const weightKg = weight.ok ? kg(weight.value.kg) : undefined;
  const tube = childTube(
    { ageA: age.value, weightKg: weightKg?.ok === true ? weightKg.value : undefined },
    {
      childCuffedPlusMm: tubes.childCuffedPlusMm.value,
      childUncuffedPlusMm: tubes.childUncuffedPlusMm.value,
      childDepthPlusCm: tubes.childDepthPlusCm.value,
      infantMm: tubes.infantMm.value,
      infantFromKg: tubes.infantFromKg.value,
      oneYearOldMm: tubes.oneYearOldMm.value,
      spareStepMm,
    },
  );
  return tube.ok ? ok({ kind: "child", ...tube.value }) : fail({ kind: "no-tube" });
}
