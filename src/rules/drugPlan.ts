import { countsAtWeight } from "../core/doseBand.ts";
import { planDose, type PlannedDose } from "../core/dosePlan.ts";
import { fail, ok, type Result } from "../core/result.ts";
import { weightFor, type Body, type ScaledWeight } from "../core/weightFor.ts";
import type { CaseState } from "../log/caseState.ts";
import { isAfterTube } from "../log/phase.ts";
import { selectLatest } from "../log/selectors.ts";
import { selectTargets } from "../log/targets.ts";
import type { Dose, Infusion, Protocol } from "../protocol/protocol.ts";
import { findMedicine, type Medicine } from "../protocol/findMedicine.ts";
import { patientBody, withHeightGuess } from "./patientBody.ts";
import { patientShock, type PatientShock } from "./patientShock.ts";

/** A dose for this patient, in mass or units: never a volume, since no concentration has been read back. */
export type DrugPlan = {
  readonly medicine: Medicine;
  readonly dose: Dose;
  /** Where in the protocol file the dose stands. */
  readonly path: string;
  readonly planned: PlannedDose;
  readonly weight: ScaledWeight | undefined;
  /** None: not known, so nothing was reduced and that is said. */
  readonly shock: PatientShock | undefined;
  /** How many doses for another purpose the protocol has for this patient. */
  readonly others: number;
};

export type DrugPlanError =
  | { readonly kind: "no-medicine" }
  | { readonly kind: "not-in-region"; readonly medicine: Medicine }
  /** What the dose goes by was asked back and not answered: neither the old value nor the new may be used. */
  | { readonly kind: "in-question"; readonly code: (typeof BODY_CODES)[number] }
  /** The protocol leaves it out in shock. */
  | { readonly kind: "omitted-in-shock"; readonly medicine: Medicine; readonly shock: PatientShock }
  /** The protocol does not give it while the systolic is under its target. */
  | {
      readonly kind: "pressure-too-low";
      readonly medicine: Medicine;
      readonly sbpMmHg: number;
      readonly ageMs: number;
      readonly targetMmHg: number;
    }
  /** Ordered by rate alone. */
  | { readonly kind: "infusion-only"; readonly medicine: Medicine; readonly infusion: Infusion }
  /** The protocol has no dose for a patient of this kind. */
  | { readonly kind: "no-dose"; readonly medicine: Medicine; readonly population: "adult" | "child" }
  | {
      readonly kind: "missing";
      readonly medicine: Medicine;
      readonly missing: readonly ("weight" | "height" | "sex")[];
    }
  /** An adult too short for the formula of the weight that is ordered. */
  | { readonly kind: "too-short"; readonly medicine: Medicine; readonly fromCm: number }
  | { readonly kind: "impossible"; readonly medicine: Medicine };

/** What decides which weight a dose goes by. */
const BODY_CODES = ["weight", "height", "age"] as const;

/** What was asked back of the patient's size and not answered: no dose and no rate may go by it. */
export const bodyInQuestion = ({ questions }: CaseState): (typeof BODY_CODES)[number] | undefined =>
  BODY_CODES.find((code) => questions.some(({ about }) => about.includes(code)));

type Audience = { readonly population: "adult" | "child" | "all" };

const isFor = (population: "adult" | "child") => (order: Audience) =>
  order.population === "all" || order.population === population;

const hasBand = ({ fromKg, belowKg }: Dose): boolean => fromKg !== undefined || belowKg !== undefined;

type Chosen = { readonly dose: Dose; readonly index: number } | "missing-weight" | undefined;

/** Once the tube is confirmed, the doses for then come first: the others were for before it. */
function inOrder(doses: readonly Dose[], afterTube: boolean): readonly (readonly [number, Dose])[] {
  const entries = [...doses.entries()];
  return afterTube
    ? entries.toSorted(([, a], [, b]) => Number(b.afterTube ?? false) - Number(a.afterTube ?? false))
    : entries;
}

/** The first dose in that order that is for this patient; a dose for some weights needs the weight first. */
function chooseDose(doses: readonly Dose[], population: "adult" | "child", body: Body, afterTube: boolean): Chosen {
  const actual = weightFor("actual", body);
  for (const [index, dose] of inOrder(doses, afterTube)) {
    if (!isFor(population)(dose)) continue;
    if (!hasBand(dose)) return { dose, index };
    if (!actual.ok) return "missing-weight";
    if (countsAtWeight(dose, actual.value.kg)) return { dose, index };
  }
  return undefined;
}

function weightOf(
  state: CaseState,
  dose: Dose,
  body: Body,
  medicine: Medicine,
): Result<ScaledWeight | undefined, DrugPlanError> {
  if (dose.per !== "kg" || dose.weight === undefined) return ok(undefined);
  const weight = weightFor(dose.weight, body);
  if (weight.ok) return ok(withHeightGuess(state, weight.value));
  return weight.error.kind === "missing"
    ? fail({ kind: "missing", medicine, missing: weight.error.missing })
    : fail({ kind: "too-short", medicine, fromCm: weight.error.fromCm });
}

/** What bars a medicine for this patient now, whatever its dose. */
function barred(state: CaseState, protocol: Protocol, medicine: Medicine, nowMs: number): DrugPlanError | undefined {
  if (!medicine.inRegion) return { kind: "not-in-region", medicine };
  const sbp = selectLatest(state, "sbp");
  // The floor of the age: a bleed's lower bound asks for caution with pressure, not for leaving the brain swollen.
  const targetMmHg = selectTargets(state, protocol).sbpMmHg.forAge.value;
  if (medicine.underSbpTarget || sbp === undefined || sbp.value >= targetMmHg) return undefined;
  return { kind: "pressure-too-low", medicine, sbpMmHg: sbp.value, ageMs: nowMs - sbp.atMs, targetMmHg };
}

/** No dose fits: then what the protocol has instead, if anything. */
function noDose(medicine: Medicine, population: "adult" | "child"): DrugPlanError {
  const infusion = medicine.infusions.find(isFor(population));
  return infusion === undefined
    ? { kind: "no-dose", medicine, population }
    : { kind: "infusion-only", medicine, infusion };
}

/**
 * The protocol's dose of a drug for this patient.
 *
 * @param id key of the drug or osmotic agent in the protocol.
 * @returns  the first dose of the protocol that is for this patient, worked out; or why there is none, as data. Once the
 *           tube is confirmed, one that is for after it goes before the others.
 *
 * Not for: a volume. Not for: whether the drug is right for this patient.
 */
export function planDrug(
  state: CaseState,
  protocol: Protocol,
  id: string,
  nowMs: number,
): Result<DrugPlan, DrugPlanError> {
  const medicine = findMedicine(protocol, id);
  if (medicine === undefined) return fail({ kind: "no-medicine" });
  const bar = barred(state, protocol, medicine, nowMs);
  if (bar !== undefined) return fail(bar);
  const code = bodyInQuestion(state);
  if (code !== undefined) return fail({ kind: "in-question", code });
  const body = patientBody(state, protocol);
  const population = body.isChild ? "child" : "adult";
  const chosen = chooseDose(medicine.doses, population, body, isAfterTube(state));
  if (chosen === "missing-weight") return fail({ kind: "missing", medicine, missing: ["weight"] });
  if (chosen === undefined) return fail(noDose(medicine, population));
  const { dose, index } = chosen;
  const shock = patientShock(state, protocol, nowMs);
  if (shock?.shocked && dose.omitInShock) return fail({ kind: "omitted-in-shock", medicine, shock });
  const weight = weightOf(state, dose, body, medicine);
  if (!weight.ok) return weight;
  const planned = planDose(dose, weight.value, { shocked: shock?.shocked ?? false });
  if (!planned.ok) return fail({ kind: "impossible", medicine });
  const path = `${medicine.path}.doses[${index}]`;
  const others = medicine.doses.filter((d) => isFor(population)(d) && d.purpose !== dose.purpose).length;
  return ok({ medicine, dose, path, planned: planned.value, weight: weight.value, shock, others });
}
