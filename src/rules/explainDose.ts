import { derive, type Derivation, type DerivationInput, type Formula } from "../core/derivation.ts";
import { bodyFormulas } from "../core/formulas/body.ts";
import { drugFormulas } from "../core/formulas/drugs.ts";
import { pressureFormulas } from "../core/formulas/pressure.ts";
import type { WeightScalar } from "../core/doseUnits.ts";
import type { CaseState } from "../log/caseState.ts";
import { selectLatest } from "../log/selectors.ts";
import type { Explanation } from "../log/why/explanation.ts";
import { recordedInput } from "../log/why/inputs.ts";
import type { ScaledWeight } from "../core/weightFor.ts";
import type { DrugPlan } from "./drugPlan.ts";

const SCALAR_FORMULA: Readonly<Record<Exclude<WeightScalar, "actual">, Formula>> = {
  ideal: bodyFormulas.idealWeight,
  lean: bodyFormulas.leanWeight,
  adjusted: bodyFormulas.adjustedWeight,
};

const recorded = (
  state: CaseState,
  code: "weight" | "height" | "age",
  name: string,
  unit: string,
): DerivationInput[] => {
  const entry = selectLatest(state, code);
  const kind = entry?.method === "estimated" ? "estimated" : "measured";
  return entry === undefined ? [] : [recordedInput(name, unit, entry, kind)];
};

/** The weight of the dose is the one that somebody said, measured or guessed: there is nothing to work out. */
const wasSaid = (state: CaseState, { scalarUsed }: ScaledWeight): boolean =>
  scalarUsed === "actual" && selectLatest(state, "weight") !== undefined;

/** How the weight of the dose came about; none where it was simply said. */
function weightDerivation(state: CaseState, { weight }: DrugPlan): Derivation | undefined {
  if (weight === undefined || wasSaid(state, weight)) return undefined;
  const name = `${weight.scalarUsed} weight`;
  const made = { name, value: weight.kg, unit: "kg" };
  if (weight.scalarUsed === "actual")
    return derive({ ...made, formula: bodyFormulas.weightByAge, inputs: recorded(state, "age", "age", "years") });
  // The ideal weight is had from height alone.
  const weightToo = weight.scalarUsed === "ideal" ? [] : recorded(state, "weight", "weight", "kg");
  const inputs = [...recorded(state, "height", "height", "cm"), ...weightToo];
  return derive({ ...made, formula: SCALAR_FORMULA[weight.scalarUsed], inputs });
}

/** HR / SBP and the limit it was held against; only where it changed the amounts. */
function shockDerivation({ shock, planned }: DrugPlan): Derivation | undefined {
  if (shock === undefined || !planned.shocked) return undefined;
  const { index: value, inputs, limit: against } = shock;
  return derive({ formula: pressureFormulas.shockIndex, name: "shock index", value, unit: "", inputs, against });
}

const limitOf = (name: string, value: number, { dose, path }: DrugPlan): DerivationInput => ({
  name,
  value,
  unit: dose.unit,
  kind: "protocol",
  path: `${path}.${name}`,
  source: dose.source,
});

function inputsOf(plan: DrugPlan): readonly DerivationInput[] {
  const { dose, path, planned, weight } = plan;
  const { source } = dose;
  const amount = `${planned.shocked ? "shock." : ""}usual`;
  const { usual } = (planned.shocked ? dose.shock : undefined) ?? dose;
  const unit = dose.per === "kg" ? `${dose.unit}/kg` : dose.unit;
  const ordered: DerivationInput = {
    name: "dose",
    value: usual,
    unit,
    kind: "protocol",
    path: `${path}.${amount}`,
    source,
  };
  const kilos: DerivationInput[] =
    weight === undefined
      ? []
      : [{ name: `${weight.scalarUsed} weight`, value: weight.kg, unit: "kg", kind: weight.kind }];
  const limits = [
    ...(planned.capped && dose.cap !== undefined ? [limitOf("cap", dose.cap, plan)] : []),
    ...(planned.raised && dose.minimum !== undefined ? [limitOf("minimum", dose.minimum, plan)] : []),
  ];
  return [ordered, ...kilos, ...limits];
}

/** Why a dose is what it is: the amount ordered, the weight it goes by, the shock that changed it, and its limits. */
export function explainDose(state: CaseState, plan: DrugPlan): Explanation {
  const { medicine, planned } = plan;
  const parts = [weightDerivation(state, plan), shockDerivation(plan)].filter((part) => part !== undefined);
  const { value, unit } = planned.usual;
  const derivation = derive({
    formula: drugFormulas.planDose,
    name: medicine.name,
    value,
    unit,
    inputs: inputsOf(plan),
    parts,
  });
  return { kind: "derived", derivation };
}
