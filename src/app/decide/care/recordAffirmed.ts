import { sayHowMuch, sayInfusion, sayWorkedOut } from "../../../language/sentences/infusion.ts";
import { sayFluidTotal } from "../../../language/sentences/fluid.ts";
import { sayGiven } from "../../../language/sentences/given.ts";
import { sayStrengthOnce } from "../../../language/sentences/amount.ts";
import { recipeSteps } from "../../../language/sentences/recipe.ts";
import { sentences } from "../../../language/sentences/sentence.ts";
import { sayDoseVolume } from "../../../language/sentences/strength.ts";
import type { CaseState } from "../../../log/caseState.ts";
import type { AffirmedFact, NewFact, RateWanted } from "../../../log/facts.ts";
import { reduceFacts } from "../../../log/reduceFact.ts";
import { isAfterTube } from "../../../log/phase.ts";
import { selectTotal } from "../../../log/totals.ts";
import { findMedicine } from "../../../protocol/findMedicine.ts";
import { findRecipe } from "../../../protocol/findStrengths.ts";
import { planDrawUp } from "../../../rules/drawUpPlan.ts";
import { planDrug, type DrugPlan } from "../../../rules/drugPlan.ts";
import { findFluid, fluidInAll } from "../../../rules/fluidTotal.ts";
import { doseRepeats } from "../../../rules/givenCheck.ts";
import { infusionEnds } from "../../../rules/infusionEnd.ts";
import { infusionSetting } from "../../../rules/infusionSetting.ts";
import { osmoticEnds } from "../../../rules/osmoticEnd.ts";
import type { AppContext } from "../../context.ts";
import { recorded, type Decision } from "../decision.ts";
import { stamp } from "../stamp.ts";
import { startRescue } from "./course/decideRescue.ts";
import { drawnUp } from "./drawnUp.ts";
import { rateWanted } from "./decideHowMuch.ts";

type Affirmed<T extends AffirmedFact["type"]> = Extract<AffirmedFact, { readonly type: T }>;

/** With the tube in, the concentration of a sedative is that of its infusion: its induction dose must not be heard as one. */
const isForInfusion = (log: CaseState, { dose, medicine }: DrugPlan): boolean =>
  isAfterTube(log) && dose.afterTube !== true && medicine.infusions.length > 0;

/** What can be worked out now that the concentration is known: the volume of the dose, or the pump's rate. */
function afterStrength(
  context: AppContext,
  log: CaseState,
  { drugId, strength }: Affirmed<"strength.affirmed">,
  forRate: RateWanted | undefined,
  nowMs: number,
): string {
  const { protocol } = context;
  const plan = planDrug(log, protocol, drugId, nowMs);
  const isVolume = plan.ok && plan.value.planned.usual.unit === "mL";
  if (forRate === undefined && plan.ok && !isVolume && !isForInfusion(log, plan.value))
    return sayDoseVolume(planDrawUp(plan.value, strength), plan.value, strength);
  const medicine = findMedicine(protocol, drugId);
  const named = `${medicine?.spokenName ?? drugId} ${sayStrengthOnce(strength)}`;
  const running = log.care.infusions[drugId];
  const isRunning = running !== undefined && running.rate.value > 0;
  const wanted = forRate ?? (isRunning ? { rate: running.rate } : {});
  const rate = medicine && rateWanted(context, log, medicine, wanted);
  if (medicine === undefined || rate === undefined) return sentences(named);
  const setting = infusionSetting(log, protocol, medicine, rate, wanted.weightKg);
  return forRate?.weightKg === undefined
    ? sentences(named, sayWorkedOut(setting, isRunning || forRate !== undefined ? "" : "Start "))
    : sentences(named, sayHowMuch("", setting, forRate.weightKg));
}

/** With its concentration affirmed the dose has just been spoken as a volume. */
function doseSaid(
  { protocol }: AppContext,
  log: CaseState,
  fact: AffirmedFact,
  forRate: RateWanted | undefined,
  nowMs: number,
): readonly NewFact[] {
  if (fact.type !== "strength.affirmed" || forRate !== undefined) return [];
  const plan = planDrug(log, protocol, fact.drugId, nowMs);
  if (!plan.ok || isForInfusion(log, plan.value)) return [];
  return [{ type: "dose.said", drugId: fact.drugId, amount: drawnUp(plan.value, fact.strength).amount }];
}

function afterGiven({ protocol }: AppContext, log: CaseState, fact: Affirmed<"drug.given">, nowMs: number): string {
  const { drugId, doseId, amount } = fact;
  const medicine = findMedicine(protocol, drugId);
  const dose = medicine?.doses.find(({ id }) => id === doseId);
  return sayGiven({
    name: medicine?.spokenName ?? drugId,
    amount,
    total: selectTotal(log, drugId),
    repeats: dose && doseRepeats(log, drugId, dose),
    ends: osmoticEnds(log, protocol).find((end) => end.drugId === drugId),
    nowMs,
  });
}

function afterInfusion(
  { protocol }: AppContext,
  log: CaseState,
  { drugId, rate, mlPerH }: Affirmed<"infusion.set">,
  nowMs: number,
): string {
  const end = infusionEnds(log, protocol, nowMs).find((one) => one.drugId === drugId);
  const name = findMedicine(protocol, drugId)?.spokenName ?? drugId;
  return sayInfusion(name, { rate, mlPerH }, end && end.atMs - nowMs);
}

function afterFluid({ protocol }: AppContext, log: CaseState, { fluidId }: Affirmed<"fluid.given">): string {
  const { volumeMl, perKilo } = fluidInAll(log, protocol, fluidId);
  return sayFluidTotal(findFluid(protocol, fluidId) ?? { label: fluidId }, volumeMl, perKilo);
}

function firstStep({ protocol }: AppContext, { drugId, recipeId }: Affirmed<"recipe.started">): string {
  const recipe = findRecipe(protocol, drugId, recipeId);
  const [first] = recipe === undefined ? [] : recipeSteps(recipe);
  return first ?? "That recipe is not in this protocol.";
}

function sayAfter(
  context: AppContext,
  log: CaseState,
  fact: AffirmedFact,
  forRate: RateWanted | undefined,
  nowMs: number,
): string {
  switch (fact.type) {
    case "strength.affirmed":
      return afterStrength(context, log, fact, forRate, nowMs);
    case "drug.given":
      return afterGiven(context, log, fact, nowMs);
    case "infusion.set":
      return afterInfusion(context, log, fact, nowMs);
    case "fluid.given":
      return afterFluid(context, log, fact);
    case "recipe.started":
      return firstStep(context, fact);
    case "rescue.started":
      return "Recorded.";
  }
}

/**
 * What was read back has been affirmed: it is put into the log as it was read, and what follows from it is said.
 *
 * @param forRate a rate that was asked about before its concentration was known.
 */
export function recordAffirmed(
  context: AppContext,
  log: CaseState,
  facts: readonly AffirmedFact[],
  nowMs: number,
  forRate?: RateWanted,
): Decision {
  if (facts.some(({ type }) => type === "rescue.started")) return startRescue(context, facts);
  const after = reduceFacts(stamp(log, facts, nowMs), log);
  const said = facts.flatMap((fact) => doseSaid(context, after, fact, forRate, nowMs));
  return recorded(sentences(...facts.map((fact) => sayAfter(context, after, fact, forRate, nowMs))), [
    ...facts,
    ...said,
  ]);
}
