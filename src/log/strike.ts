import type { VitalCode } from "../core/vitals.ts";
import type { CaseState, History } from "./caseState.ts";
import { lessOne, linksOf, without } from "./chains.ts";
import { phasesWithout } from "./phase.ts";
import { strikeCare } from "./strikeCare.ts";

/**
 * Which vital holds this fact. All histories are walked side by side from their newest entry, so that striking what was
 * just said costs the same however long the case is.
 */
function vitalHolding(vitals: CaseState["vitals"], id: string): VitalCode | undefined {
  let links = Object.entries(vitals) as [VitalCode, History][];
  while (links.length > 0) {
    const older: [VitalCode, History][] = [];
    for (const [code, link] of links) {
      if (link.entry.id === id) return code;
      if (link.earlier !== undefined) older.push([code, link.earlier]);
    }
    links = older;
  }
  return undefined;
}

/** Takes one recorded fact out of sight: the value before it is the current one again. The fact itself stays in the log. */
function strikeOne(state: CaseState, id: string): CaseState {
  // The short chains first: an id that is in none of them is the only one worth looking up among the vitals.
  const findings = lessOne(state.findings, (link) => link.id === id);
  if (findings !== state.findings) return { ...state, findings };
  const steps = lessOne(state.steps, (link) => link.factId === id);
  if (steps !== state.steps) return { ...state, steps };
  const struck = strikeCare(state.care, id);
  if (struck !== state.care) return { ...state, care: struck };
  const sex = without(state.sex, (link) => link.id === id);
  if (sex !== state.sex) return { ...state, sex };
  const cause = without(state.cause, (link) => link.id === id);
  if (cause !== state.cause) return { ...state, cause };
  const herniation = without(state.herniation, (link) => link.id === id);
  if (herniation !== state.herniation) return { ...state, herniation };
  const code = vitalHolding(state.vitals, id);
  if (code === undefined) return state;
  const { [code]: chain, ...others } = state.vitals;
  const rest = without(chain, (link) => link.entry.id === id);
  // A value may have brought a phase about: the first CO2 after the tube.
  const phases = phasesWithout(state.care, id, () =>
    [...linksOf(rest)].reverse().map(({ entry }) => {
      const { seq, atMs, id: factId } = entry;
      return { fact: { type: "vital.recorded", ...entry }, stamp: { seq, atMs, factId } };
    }),
  );
  const care = phases === state.care.phases ? state.care : { ...state.care, phases };
  return { ...state, care, vitals: rest === undefined ? others : { ...others, [code]: rest } };
}

/** Whether this fact counts: it was recorded and is not struck. */
export const isStanding = (state: CaseState, id: string): boolean => strikeOne(state, id) !== state;

/** After a strike, "disregard" must not reach further back by itself: what is left of the last reading, or nothing. */
function lessStruck(last: CaseState["lastReading"], ids: readonly string[]): CaseState["lastReading"] {
  if (last === undefined) return undefined;
  const facts = last.facts.filter((fact) => !ids.includes(fact.id));
  return facts.length === 0 ? undefined : { ...last, facts, factIds: facts.map((fact) => fact.id) };
}

/** Strikes recorded facts: vitals, findings, sex, cause, herniation, answers to steps and what was done. Ids that are not there change nothing. */
export function strike(state: CaseState, ids: readonly string[]): CaseState {
  return { ...ids.reduce(strikeOne, state), lastReading: lessStruck(state.lastReading, ids) };
}
