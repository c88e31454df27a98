import { concentration, type Strength } from "../../../core/concentration.ts";
import { amount as checkedAmount, convertAmount } from "../../../core/doseAmount.ts";
import { DOSE_UNITS } from "../../../core/doseUnits.ts";
import { doseIn, volumeFor } from "../../../core/drawUp.ts";
import { ml } from "../../../core/quantities.ts";
import type { SpokenAmount } from "../../../language/careIntent.ts";
import { spokenAmount } from "../../../language/sentences/amount.ts";
import { sayNoDose } from "../../../language/sentences/dose.ts";
import {
  askAmountUnit,
  askGiven,
  askHowMuch,
  askWhichPush,
  refuseAmountUnit,
} from "../../../language/sentences/given.ts";
import { roundedDose } from "../../../language/sentences/number.ts";
import { sentences } from "../../../language/sentences/sentence.ts";
import { askStrength } from "../../../language/sentences/strength.ts";
import type { SaidAmount } from "../../../log/careFacts.ts";
import type { CaseState } from "../../../log/caseState.ts";
import { findMedicine, type Medicine } from "../../../protocol/findMedicine.ts";
import { planDrug, type DrugPlan } from "../../../rules/drugPlan.ts";
import { checkGiven, doseRepeats, isSameKind } from "../../../rules/givenCheck.ts";
import { pushDoses } from "../../../rules/pushDoses.ts";
import type { AppContext } from "../../context.ts";
import { refused, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";
import { askFor, askToRecord } from "./askCare.ts";
import { drawnUp, type DrawnUp } from "./drawnUp.ts";

/** What is to go into the record, and the volume where it is known. */
type Dose = DrawnUp & { readonly saidMl?: number };

/** The unit that an amount without one is in: that of the plan, else the only one of the drug. */
function usualUnit({ doses }: Medicine, plan: DrugPlan | undefined): SaidAmount["unit"] | undefined {
  const units = [...new Set(doses.map(({ unit }) => unit))];
  return plan?.planned.usual.unit ?? (units.length === 1 ? units[0] : undefined);
}

/** Millilitres of a drug as its amount, in its usual unit; nothing without an affirmed concentration. */
function fromVolume(strength: Strength | undefined, saidMl: number, usual: SaidAmount["unit"] | undefined) {
  const [of, volume] = [strength && concentration(strength), ml(saidMl)];
  const held = of?.ok && volume.ok ? doseIn(volume.value, of.value) : undefined;
  if (!held?.ok) return undefined;
  const inUsual = usual === undefined ? held : convertAmount(held.value, usual);
  return { amount: spokenAmount(inUsual.ok ? inUsual.value : held.value), volumeMl: saidMl, saidMl };
}

/** The volume of a spoken amount, where the concentration is known. */
function withVolume(strength: Strength | undefined, amount: SaidAmount): Dose {
  if (amount.unit === "mL") return { amount, volumeMl: amount.value };
  const [of, checked] = [strength && concentration(strength), checkedAmount(amount.value, amount.unit)];
  const volume = of?.ok && checked.ok ? volumeFor(checked.value, of.value) : undefined;
  return volume?.ok ? { amount, volumeMl: roundedDose(volume.value) } : { amount };
}

/**
 * What is meant by "given" alone: the dose as it was spoken, for that was drawn up. Where weight or shock have changed the
 * plan since, the read-back gives both.
 */
function spokenDose(log: CaseState, plan: DrugPlan, strength: Strength | undefined): Dose {
  const said = log.care.dosesSaid[plan.medicine.id];
  return said === undefined ? drawnUp(plan, strength) : withVolume(strength, said);
}

function readBack(
  { protocol }: AppContext,
  log: CaseState,
  medicine: Medicine,
  plan: DrugPlan | undefined,
  { amount, volumeMl, saidMl }: Dose,
  source: Source,
  nowMs: number,
): Decision {
  const { id: drugId, spokenName: name, drugClass } = medicine;
  const prompt = askGiven({
    name,
    amount,
    plan,
    ...(saidMl !== undefined && { saidMl }),
    check: plan && checkGiven(protocol, plan, amount),
    repeats: plan && doseRepeats(log, drugId, plan.dose),
    nowMs,
  });
  const held = plan && { doseId: plan.dose.id, planned: spokenAmount(plan.planned.usual) };
  const fact = {
    type: "drug.given",
    drugId,
    drugClass,
    ...held,
    amount,
    ...(volumeMl !== undefined && { volumeMl }),
    ...source,
  } as const;
  return askToRecord(log, [fact], { prompt, source, nowMs });
}

/**
 * A drug is said to be given: read back, compared with plan and cap, and recorded only when it is affirmed.
 *
 * @param said the amount; none: the planned one.
 */
export function decideGiven(
  context: AppContext,
  log: CaseState,
  { drugId, amount: said }: { readonly drugId?: string; readonly amount?: SpokenAmount },
  source: Source,
  nowMs: number,
): Decision {
  const pushes = pushDoses(log, context.protocol, nowMs);
  const medicine = drugId === undefined ? pushes[0]?.medicine : findMedicine(context.protocol, drugId);
  if (drugId === undefined && pushes.length !== 1)
    return refused(askWhichPush(pushes.map((push) => push.medicine.spokenName)));
  if (medicine === undefined) return refused(sayNoDose({ kind: "no-medicine" }, drugId ?? source.heard));
  const { id, spokenName: name } = medicine;
  const found = planDrug(log, context.protocol, id, nowMs);
  const plan = found.ok ? found.value : undefined;
  // What is given at once comes out of the syringe, also where a bag of the drug was affirmed since.
  const inHand = pushes.find((push) => push.medicine.id === id)?.drawnUp ?? log.care.strengths[id];
  const strength = inHand?.strength;
  const asking = (prompt: string) => ({ prompt, source, nowMs });
  if (said === undefined) {
    if (plan !== undefined)
      return readBack(context, log, medicine, plan, spokenDose(log, plan, strength), source, nowMs);
    const why = found.ok ? "" : sayNoDose(found.error, name);
    return askFor(log, { kind: "amount", drugId: id }, asking(sentences(why, askHowMuch(name))));
  }
  const usual = usualUnit(medicine, plan);
  const unit = said.unit ?? usual;
  if (unit === undefined) {
    const choices = DOSE_UNITS.filter(
      (one) => one === "mcg" || one === "mg" || medicine.doses.some((d) => d.unit === one),
    );
    const wants = {
      kind: "amountUnit",
      drugId: id,
      choices: choices.map((one) => ({ value: said.value, unit: one })),
    } as const;
    return askFor(log, wants, asking(askAmountUnit(name, said.value, choices)));
  }
  if (!checkedAmount(said.value, unit).ok) return refused(askHowMuch(name));
  if (unit === "mL" && usual !== "mL") {
    const dose = fromVolume(strength, said.value, usual);
    if (dose !== undefined) return readBack(context, log, medicine, plan, dose, source, nowMs);
    return askFor(log, { kind: "strength", drugId: id }, asking(askStrength(name)));
  }
  const amount: SaidAmount = { value: said.value, unit };
  if (usual !== undefined && !isSameKind(amount, usual)) return refused(refuseAmountUnit(name, usual));
  return readBack(context, log, medicine, plan, withVolume(strength, amount), source, nowMs);
}
