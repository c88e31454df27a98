import { unreachable } from "../core/unreachable.ts";
import type { CareFact } from "./careFacts.ts";
import type { CareState, Link } from "./careState.ts";

type Stamped = { readonly id: string; readonly atMs: number };

/** How many earlier occurrences of a prompt are kept: more than a strike ever brings back. */
const PROMPTS_KEPT = 8;

/** Somebody has this occurrence of a prompt: it is not said again. */
export function acknowledgePrompt(care: CareState, promptId: string, key: string): CareState {
  const entry = care.prompts[promptId];
  return entry === undefined
    ? care
    : { ...care, prompts: { ...care.prompts, [promptId]: { ...entry, acknowledgedKey: key } } };
}

/** What a fact of care changes. */
export function reduceCare(care: CareState, fact: CareFact & Stamped, seq: number): CareState {
  const stamp = { seq, atMs: fact.atMs, factId: fact.id };
  if (fact.type === "dose.said") return { ...care, dosesSaid: { ...care.dosesSaid, [fact.drugId]: fact.amount } };
  if (fact.type === "list.read") return { ...care, list: fact.mode, listSeq: seq };
  if (fact.type === "prompt.announced") {
    const { promptId, key, atMs } = fact;
    const last = care.prompts[promptId];
    const times = last?.key === key ? last.times + 1 : 1;
    const others = last === undefined ? [] : [{ key: last.key, atMs: last.atMs }, ...last.before];
    const before = others.filter((other) => other.key !== key).slice(0, PROMPTS_KEPT);
    const acknowledgedKey = last?.acknowledgedKey;
    return { ...care, prompts: { ...care.prompts, [promptId]: { key, atMs, seq, times, before, acknowledgedKey } } };
  }
  const next: CareState = { ...care, taken: { fact, ...stamp, earlier: care.taken } };
  /** The chain with this fact at its head. */
  const on = <T>(value: T, earlier: Link<T> | undefined): Link<T> => ({ ...value, ...stamp, earlier });
  switch (fact.type) {
    // What it does to the phase is done for every fact: see `phasesAfter`.
    case "phase.entered":
      return next;
    case "airway.event":
      return { ...next, airway: on({ event: fact.event }, care.airway) };
    case "clock.started":
    case "clock.stopped": {
      const entry = on({ runs: fact.type === "clock.started" }, care.clocks[fact.clock]);
      return { ...next, clocks: { ...care.clocks, [fact.clock]: entry } };
    }
    case "strength.affirmed": {
      const { drugId, drugClass, strength } = fact;
      const entry = on({ drugId, drugClass, strength }, care.strengths[drugId]);
      return { ...next, strengths: { ...care.strengths, [drugId]: entry } };
    }
    case "drug.given": {
      const { drugId, drugClass, doseId, amount } = fact;
      const entry = on({ drugId, drugClass, doseId, amount }, care.given[drugId]);
      return { ...next, given: { ...care.given, [drugId]: entry } };
    }
    case "infusion.set": {
      const { drugId, drugClass, infusionId, rate, weightKg, mlPerH, strength } = fact;
      const entry = on({ drugId, drugClass, infusionId, rate, weightKg, mlPerH, strength }, care.infusions[drugId]);
      return { ...next, infusions: { ...care.infusions, [drugId]: entry } };
    }
    case "fluid.given": {
      const { fluidId, volumeMl } = fact;
      return { ...next, fluids: { ...care.fluids, [fluidId]: on({ fluidId, volumeMl }, care.fluids[fluidId]) } };
    }
    case "cylinder.recorded": {
      const { contentsL, fullL, flowLPerMin } = fact;
      return { ...next, cylinder: on({ contentsL, fullL, flowLPerMin }, care.cylinder) };
    }
    case "recipe.started": {
      const { drugId, recipeId } = fact;
      return { ...next, recipe: on({ drugId, recipeId, at: 0, ended: false }, care.recipe) };
    }
    case "recipe.moved":
    case "recipe.ended": {
      if (care.recipe === undefined) return next;
      const { drugId, recipeId, at } = care.recipe;
      const moved = fact.type === "recipe.moved" ? { at: fact.at, ended: false } : { at, ended: true };
      return { ...next, recipe: on({ drugId, recipeId, ...moved }, care.recipe) };
    }
    case "rescue.started":
    case "rescue.ended":
      return { ...next, rescue: on({ runs: fact.type === "rescue.started" }, care.rescue) };
    case "failure.called":
      return { ...next, failure: on({}, care.failure) };
    default:
      return unreachable(fact);
  }
}
