import { formulaHeight, predictedWeight } from "../core/bodySize.ts";
import { mlPerKg } from "../core/quantities.ts";
import type { Kg } from "../core/quantity.ts";
import { fail, ok, type Result } from "../core/result.ts";
import { tidalVolume, tidalVolumeRange } from "../core/ventilation.ts";
import type { WeightKind } from "../core/weight.ts";
import { weightFor } from "../core/weightFor.ts";
import type { CaseState } from "../log/caseState.ts";
import { selectLatest } from "../log/selectors.ts";
import { selectTargets } from "../log/targets.ts";
import type { LimitRange } from "../protocol/resolveTargets.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { patientBody } from "./patientBody.ts";

export type VentilatorPlan = {
  readonly tidalMl: { readonly usual: number; readonly low: number; readonly high: number };
  readonly weight: { readonly kg: number; readonly kind: WeightKind; readonly name: "predicted" | "actual" };
  /** The protocol has a rate to start from for adults alone. */
  readonly ratePerMin: { readonly low: number; readonly high: number } | undefined;
  readonly peepCmH2O: number;
  readonly etco2MmHg: LimitRange;
};

export type VentilatorPlanError =
  | { readonly kind: "missing"; readonly missing: readonly ("weight" | "height" | "sex")[] }
  /** An adult too short for the formula of the predicted weight. */
  | { readonly kind: "too-short"; readonly fromCm: number }
  | { readonly kind: "impossible" };

type Lungs = { readonly kg: Kg; readonly kind: WeightKind; readonly name: "predicted" | "actual" };

/** The weight that a breath goes by: predicted from the height of an adult, the actual one of a child. */
function lungsOf(state: CaseState, protocol: Protocol): Result<Lungs, VentilatorPlanError> {
  const body = patientBody(state, protocol);
  if (body.isChild) {
    const weight = weightFor("actual", body);
    return weight.ok
      ? ok({ kg: weight.value.kg, kind: weight.value.kind, name: "actual" })
      : fail({ kind: "missing", missing: ["weight"] });
  }
  const { heightCm, sex } = body;
  if (heightCm === undefined || sex === undefined) {
    const missing = [
      heightCm === undefined ? ("height" as const) : [],
      sex === undefined ? ("sex" as const) : [],
    ].flat();
    return fail({ kind: "missing", missing });
  }
  const covered = formulaHeight(heightCm);
  if (!covered.ok) return fail({ kind: "too-short", fromCm: covered.error.fromCm });
  const kind = selectLatest(state, "height")?.method === "estimated" ? "estimated" : "computed";
  return ok({ kg: predictedWeight(covered.value, sex), kind, name: "predicted" });
}

/** What the protocol starts a ventilator with for this patient; or what must be said first. */
export function planVentilator(state: CaseState, protocol: Protocol): Result<VentilatorPlan, VentilatorPlanError> {
  const lungs = lungsOf(state, protocol);
  if (!lungs.ok) return lungs;
  const { tidalMlPerKg, startRatePerMin, peepCmH2O } = protocol.ventilation;
  const { low, usual, high } = tidalMlPerKg.value;
  const [lowPerKg, usualPerKg, highPerKg] = [mlPerKg(low), mlPerKg(usual), mlPerKg(high)];
  if (!lowPerKg.ok || !usualPerKg.ok || !highPerKg.ok) return fail({ kind: "impossible" });
  const { kg, kind, name } = lungs.value;
  const span = tidalVolumeRange({ low: lowPerKg.value, high: highPerKg.value }, kg);
  return ok({
    tidalMl: { usual: tidalVolume(usualPerKg.value, kg), low: span.lowMl, high: span.highMl },
    weight: { kg, kind, name },
    ratePerMin: name === "predicted" ? startRatePerMin.value : undefined,
    peepCmH2O: peepCmH2O.value,
    etco2MmHg: selectTargets(state, protocol).etco2MmHg,
  });
}
