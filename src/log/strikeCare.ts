import { lessOne, linksOf, without } from "./chains.ts";
import type { CareState } from "./careState.ts";
import { phasesWithout } from "./phase.ts";

/** Takes one fact of care out of sight: its clock, its total and its tick are as if it had not been said. */
export function strikeCare(care: CareState, id: string): CareState {
  const isIt = (link: { readonly factId: string }): boolean => link.factId === id;
  const taken = without(care.taken, isIt);
  if (taken === care.taken) return care;
  return {
    ...care,
    taken,
    phases: phasesWithout(care, id, () =>
      [...linksOf(taken)].reverse().map(({ fact, seq, atMs, factId }) => ({ fact, stamp: { seq, atMs, factId } })),
    ),
    airway: without(care.airway, isIt),
    clocks: lessOne(care.clocks, isIt),
    strengths: lessOne(care.strengths, isIt),
    given: lessOne(care.given, isIt),
    infusions: lessOne(care.infusions, isIt),
    fluids: lessOne(care.fluids, isIt),
    cylinder: without(care.cylinder, isIt),
    recipe: without(care.recipe, isIt),
    rescue: without(care.rescue, isIt),
    failure: without(care.failure, isIt),
  };
}
