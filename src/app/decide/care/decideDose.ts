import { askStrength, sayVolume } from "../../../language/sentences/strength.ts";
import type { CaseState } from "../../../log/caseState.ts";
import type { NewFact } from "../../../log/facts.ts";
import { labelledPercentage } from "../../../protocol/findStrengths.ts";
import { planDrawUp } from "../../../rules/drawUpPlan.ts";
import { drawnUp } from "./drawnUp.ts";
import { planDrug, type DrugPlan } from "../../../rules/drugPlan.ts";
import type { AppContext } from "../../context.ts";
import type { Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";
import { askFor } from "./askCare.ts";
import { askStrengthOf } from "./decideStrength.ts";

/** The protocol's dose, to be said; `then` follows it. */
const doseOf = (drugId: string, heard: string, facts: readonly NewFact[], then?: string): Decision => ({
  facts,
  outcome: "answered",
  reply: { kind: "dose", drugId, heard, then },
});

/** The concentration is asked for; that of an osmotic agent stands in its name and is only read back. */
function askConcentration(
  context: AppContext,
  log: CaseState,
  { medicine }: DrugPlan,
  source: Source,
  nowMs: number,
  before: readonly NewFact[],
): Decision {
  const { id: drugId, spokenName } = medicine;
  const percentage = labelledPercentage(context.protocol, drugId);
  if (percentage !== undefined) return askStrengthOf(context, log, drugId, percentage, source, nowMs, before);
  return askFor(log, { kind: "strength", drugId }, { prompt: askStrength(spokenName), source, nowMs }, before);
}

/**
 * The dose of a drug for this patient; then its volume, but only where the concentration in the hand was affirmed. Else
 * that is asked for, and no volume is said.
 *
 * @param before facts that go into the log first.
 */
export function decideDose(
  context: AppContext,
  log: CaseState,
  drugId: string,
  source: Source,
  nowMs: number,
  before: readonly NewFact[] = [],
): Decision {
  const plan = planDrug(log, context.protocol, drugId, nowMs);
  // A dose in millilitres is its own volume.
  if (!plan.ok) return doseOf(drugId, source.heard, before);
  const strength = log.care.strengths[drugId]?.strength;
  const said: NewFact = { type: "dose.said", drugId, amount: drawnUp(plan.value, strength).amount };
  const facts = [...before, said];
  if (plan.value.planned.usual.unit === "mL") return doseOf(drugId, source.heard, facts);
  if (strength !== undefined) {
    const volume = sayVolume(planDrawUp(plan.value, strength), plan.value, strength);
    return doseOf(drugId, source.heard, facts, volume);
  }
  const asked = askConcentration(context, log, plan.value, source, nowMs, facts);
  const prompt = asked.reply.kind === "words" ? asked.reply.text : undefined;
  return { ...doseOf(drugId, source.heard, asked.facts, prompt), outcome: "asked" };
}
