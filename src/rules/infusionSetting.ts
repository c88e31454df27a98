import { concentration } from "../core/concentration.ts";
import { infusionRate, isPerKg, mlPerH, orderedRate, pumpRate } from "../core/infusionRate.ts";
import { kg as checkedKg } from "../core/quantities.ts";
import { weightFor } from "../core/weightFor.ts";
import type { WeightKind } from "../core/weight.ts";
import type { SaidRate } from "../log/careFacts.ts";
import type { CaseState } from "../log/caseState.ts";
import type { Medicine } from "../protocol/findMedicine.ts";
import type { Infusion, Protocol } from "../protocol/protocol.ts";
import { bodyInQuestion } from "./drugPlan.ts";
import { patientBody, withHeightGuess } from "./patientBody.ts";

type Kilos = { readonly kg: number; readonly kind: WeightKind };

/** An infusion as it is to run. */
export type InfusionSetting = {
  /** As ordered; in mL/h only where it cannot be had in a unit of the drug. */
  readonly rate: SaidRate;
  /** The order of the protocol that it is held against; none that has this unit. */
  readonly infusion: Infusion | undefined;
  /** The weight that went into it; only where one did. */
  readonly weight: Kilos | undefined;
  /** What the pump is set to; none without an affirmed strength, or without the weight. */
  readonly mlPerH: number | undefined;
  /** Why the one cannot be had from the other. */
  readonly lacks: "strength" | "weight" | "unit" | undefined;
};

/** The infusions of the protocol that are for this patient. */
export function infusionsFor(state: CaseState, protocol: Protocol, { infusions }: Medicine): readonly Infusion[] {
  const population = patientBody(state, protocol).isChild ? "child" : "adult";
  return infusions.filter((one) => one.population === "all" || one.population === population);
}

/** A number three times outside the range of an order is not meant in its unit. */
const TIMES_OUTSIDE = 3;

/** The orders in whose unit a bare number could have been meant. */
export const fittingInfusions = (infusions: readonly Infusion[], value: number): readonly Infusion[] =>
  infusions.filter(({ low, high }) => value >= low / TIMES_OUTSIDE && value <= high * TIMES_OUTSIDE);

function weightOf(state: CaseState, protocol: Protocol, infusion: Infusion | undefined): Kilos | undefined {
  if (bodyInQuestion(state) !== undefined) return undefined;
  const weight = weightFor(infusion?.weight ?? "actual", patientBody(state, protocol));
  return weight.ok ? withHeightGuess(state, weight.value) : undefined;
}

type With = { readonly kg: ReturnType<typeof doorKg>; readonly of: ReturnType<typeof doorOf> };
const doorKg = (weight: Kilos | undefined) => {
  const checked = weight && checkedKg(weight.kg);
  return checked?.ok ? checked.value : undefined;
};
const doorOf = (state: CaseState, drugId: string) => {
  const strength = state.care.strengths[drugId]?.strength;
  const checked = strength && concentration(strength);
  return checked?.ok ? checked.value : undefined;
};

/** What is missing for the way between a rate and mL/h. */
function missing(unit: SaidRate["unit"], { kg, of }: With): InfusionSetting["lacks"] {
  if (isPerKg(unit) && kg === undefined) return "weight";
  return of === undefined && unit !== "mL/kg/h" ? "strength" : "unit";
}

/** The pump's number is what was said: it is turned into the first order of the protocol that it can be had in. */
function fromPump(
  pumpMlPerH: number,
  infusions: readonly Infusion[],
  state: CaseState,
  protocol: Protocol,
  id: string,
) {
  const said: SaidRate = { value: pumpMlPerH, unit: "mL/h" };
  const running = mlPerH(pumpMlPerH);
  let lacks: InfusionSetting["lacks"] = "unit";
  for (const infusion of running.ok ? infusions : []) {
    const weight = isPerKg(infusion.unit) ? weightOf(state, protocol, infusion) : undefined;
    const by: With = { kg: doorKg(weight), of: doorOf(state, id) };
    const rate = running.ok ? orderedRate(running.value, infusion.unit, { kg: by.kg, concentration: by.of }) : running;
    if (rate.ok) return { rate: rate.value, infusion, weight, mlPerH: pumpMlPerH, lacks: undefined };
    lacks = missing(infusion.unit, by);
  }
  return { rate: said, infusion: undefined, weight: undefined, mlPerH: pumpMlPerH, lacks };
}

/**
 * A rate as it was said, worked out both ways as far as that can be done: mL/h needs the affirmed strength, and a rate for
 * each kilogram the weight that the protocol's order goes by.
 *
 * @param rate     in the unit it was said in, above zero.
 * @param weightKg instead of the patient's, where one was said with the question.
 * @returns        unrounded; see `InfusionSetting` for what may be missing.
 *
 * Not for: whether the rate is right.
 */
export function infusionSetting(
  state: CaseState,
  protocol: Protocol,
  medicine: Medicine,
  rate: SaidRate,
  weightKg?: number,
): InfusionSetting {
  const infusions = infusionsFor(state, protocol, medicine);
  if (rate.unit === "mL/h") return fromPump(rate.value, infusions, state, protocol, medicine.id);
  const infusion = infusions.find(({ unit }) => unit === rate.unit);
  const spoken: Kilos | undefined = weightKg === undefined ? undefined : { kg: weightKg, kind: "measured" };
  const weight = isPerKg(rate.unit) ? (spoken ?? weightOf(state, protocol, infusion)) : undefined;
  const by: With = { kg: doorKg(weight), of: doorOf(state, medicine.id) };
  const checked = infusionRate(rate.value, rate.unit);
  const pump = checked.ok ? pumpRate(checked.value, { kg: by.kg, concentration: by.of }) : checked;
  return pump.ok
    ? { rate, infusion, weight, mlPerH: pump.value, lacks: undefined }
    : { rate, infusion, weight, mlPerH: undefined, lacks: missing(rate.unit, by) };
}

/** Whether a rate lies outside the protocol's order, and on which side. */
export function outsideRange({ rate, infusion }: InfusionSetting): "under" | "over" | undefined {
  if (infusion?.unit !== rate.unit) return undefined;
  return rate.value > infusion.high ? "over" : rate.value < infusion.low ? "under" : undefined;
}
