import { selectFluidTotal } from "../log/totals.ts";
import type { CaseState } from "../log/caseState.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { weightFor } from "../core/weightFor.ts";
import type { WeightKind } from "../core/weight.ts";
import { bodyInQuestion } from "./drugPlan.ts";
import { patientBody } from "./patientBody.ts";

type Fluid = Protocol["fluids"][number];

export const findFluid = (protocol: Protocol, id: string): Fluid | undefined =>
  protocol.fluids.find((f) => f.id === id);

/** The weight that fluid is counted by: the actual one, of a child also that by age. None while it is in question. */
function weightOf(state: CaseState, protocol: Protocol) {
  if (bodyInQuestion(state) !== undefined) return undefined;
  const weight = weightFor("actual", patientBody(state, protocol));
  return weight.ok ? weight.value : undefined;
}

/** mL for each kilogram; nothing where no weight is known. */
function fluidPerKilo(
  state: CaseState,
  protocol: Protocol,
  volumeMl: number,
): { readonly mlPerKg: number; readonly weight: WeightKind } | undefined {
  const weight = weightOf(state, protocol);
  return weight && { mlPerKg: volumeMl / weight.kg, weight: weight.kind };
}

/** What ran in of a fluid in all, and for each kilogram. */
export function fluidInAll(state: CaseState, protocol: Protocol, fluidId: string) {
  const { volumeMl } = selectFluidTotal(state, fluidId);
  return { volumeMl, perKilo: fluidPerKilo(state, protocol, volumeMl) };
}

/** What the protocol gives at once, where a volume is over it: mL for an adult, mL for each kilogram of a child. */
export function overFluidRange(
  state: CaseState,
  protocol: Protocol,
  { adultMl, childMlPerKg }: Fluid,
  volumeMl: number,
): { readonly value: number; readonly perKilo: boolean } | undefined {
  if (!patientBody(state, protocol).isChild)
    return volumeMl > adultMl.value.high ? { value: adultMl.value.high, perKilo: false } : undefined;
  const perKilo = fluidPerKilo(state, protocol, volumeMl);
  const { high } = childMlPerKg.value;
  return perKilo !== undefined && perKilo.mlPerKg > high * (1 + 1e-9) ? { value: high, perKilo: true } : undefined;
}
