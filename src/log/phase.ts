import type { CareFact, Phase } from "./careFacts.ts";
import { PHASES } from "./careFacts.ts";
import type { CareState, PhaseEntry } from "./careState.ts";
import type { CaseState } from "./caseState.ts";
import { above, linksOf, without } from "./chains.ts";
import type { Fact, NewFact } from "./facts.ts";

type Stamp = { readonly seq: number; readonly atMs: number; readonly factId: string };

const rankOf = (phase: Phase): number => PHASES.indexOf(phase);
const FIRST: Phase = "assess";

export const selectPhase = ({ care }: Pick<CaseState, "care">): Phase => care.phases?.phase ?? FIRST;

/** Since when the case has been in one of these phases without a break; none: it is not. -Infinity: from its start. */
export function phaseRunSinceMs(
  { care }: Pick<CaseState, "care">,
  phases: readonly Phase[] | undefined,
): number | undefined {
  if (phases === undefined) return -Infinity;
  if (!phases.includes(selectPhase({ care }))) return undefined;
  for (let entry = care.phases; entry !== undefined; entry = entry.earlier) {
    const before = entry.earlier?.phase ?? FIRST;
    if (!phases.includes(before)) return entry.atMs;
  }
  return -Infinity;
}

/** From the tube's confirmation on: other steps, another grammar, other prompts. */
export const isAfterTube = (state: Pick<CaseState, "care">): boolean => rankOf(selectPhase(state)) >= rankOf("settle");

/** The tube is in and neither confirmed nor out again. */
const waitsForCo2 = ({ airway }: CareState): boolean => airway?.event === "tubeIn";

/** The phase that a fact brings about by itself. */
function broughtBy(care: CareState, fact: NewFact): Phase | undefined {
  switch (fact.type) {
    case "step.called":
      // The lists of the rescue and of the failed airway are read in whatever phase they come.
      return care.rescue?.runs === true || care.failure !== undefined ? undefined : "prepare";
    case "drug.given":
      return fact.drugClass === "induction" || fact.drugClass === "muscleRelaxant" ? "induce" : undefined;
    case "airway.event":
      return fact.event === "tubeConfirmed" ? "settle" : fact.event === "out" ? undefined : "intubate";
    case "vital.recorded":
      return fact.code === "etco2" && waitsForCo2(care) ? "settle" : undefined;
    default:
      return undefined;
  }
}

/** A tube that comes out takes the case back; nothing else does but a word. */
const goesBack = (fact: Fact): boolean => fact.type === "airway.event" && fact.event === "tubeOut";

const isSaid = (fact: Fact): fact is Extract<Fact, CareFact & { type: "phase.entered" }> =>
  fact.type === "phase.entered";

/** The phases with a second fact that brought one of them about: striking the first one leaves it as it is. */
const broughtAlsoBy = (phases: PhaseEntry | undefined, factId: string, by: Partial<Stamp>): PhaseEntry | undefined =>
  above(
    phases,
    (entry) => entry.factId === factId,
    (old) => ({ ...old, ...by, earlier: old }),
  ) ?? phases;

/** Whatever would have brought a phase about: a number or an act that is in the record, oldest first. */
export type MayBring = { readonly fact: NewFact; readonly stamp: Stamp };

/**
 * The phases without what this fact brought about, unless a later one would have done so too: then it is that one's.
 *
 * @param later facts that stand, oldest first.
 */
export function phasesWithout(
  care: CareState,
  factId: string,
  later: () => readonly MayBring[],
): PhaseEntry | undefined {
  const struck = [...linksOf(care.phases)].find((entry) => entry.factId === factId);
  if (struck === undefined) return care.phases;
  const heir = later().find(({ fact, stamp }) => stamp.seq > struck.seq && broughtBy(care, fact) === struck.phase);
  const phases = heir === undefined ? care.phases : broughtAlsoBy(care.phases, factId, heir.stamp);
  return without(phases, (entry) => entry.factId === factId);
}

/** The phases with what this fact does to them. Each entry carries its fact, so that striking the fact undoes it. */
export function phasesAfter(care: CareState, fact: Fact, stamp: Stamp): PhaseEntry | undefined {
  const { phases } = care;
  if (fact.type === "vital.recorded" && fact.corrects)
    return broughtAlsoBy(phases, fact.corrects.id, { factId: stamp.factId });
  if (isSaid(fact)) return { phase: fact.phase, ...stamp, earlier: phases };
  const phase = broughtBy(care, fact);
  if (phase === undefined) return phases;
  const isFurther = rankOf(phase) > rankOf(phases?.phase ?? FIRST);
  return isFurther || goesBack(fact) ? { phase, ...stamp, earlier: phases } : phases;
}
