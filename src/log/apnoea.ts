import type { AirwayEvent } from "./careFacts.ts";
import type { CaseState } from "./caseState.ts";
import { hasCo2Since, selectAirway } from "./attempt.ts";
import { linksOf } from "./chains.ts";
import { earliestOf, givenOf } from "./given.ts";
import { spokenStart } from "./spokenClock.ts";

const BEGINS: readonly AirwayEvent[] = ["bladeIn", "tubeOut"];

type Start = { readonly seq: number; readonly atMs: number };

/** What can begin an apnoea: a paralytic; a blade, or a tube that came out, in a patient who was given one. */
function startsOf(state: CaseState): readonly Start[] {
  const relaxants = [...givenOf(state, ["muscleRelaxant"])];
  const first = earliestOf(relaxants);
  if (first === undefined) return [];
  const airway = [...linksOf(state.care.airway)].filter(({ event, seq }) => BEGINS.includes(event) && seq > first.seq);
  return [...relaxants, ...airway];
}

/** A tube that gave CO2 and came out again ended the apnoea before it, though nobody called it confirmed. */
function provedTubeOut({ care, vitals }: CaseState): number {
  let outSeq: number | undefined;
  for (const { event, seq } of linksOf(care.airway)) {
    if (event === "tubeOut") outSeq = seq;
    if (event !== "tubeIn" || outSeq === undefined) continue;
    for (let link = vitals.etco2; link !== undefined && link.entry.seq > seq; link = link.earlier)
      if (link.entry.seq < outSeq) return outSeq - 1;
    outSeq = undefined;
  }
  return -1;
}

/** What ended it last: it was called over, the blade came out, the tube was called confirmed, or CO2 came through it. */
function lastEnd(state: CaseState): number {
  const stopped = state.care.clocks.apnoea?.runs === false ? state.care.clocks.apnoea.seq : -1;
  // With the blade out the patient is ventilated by mask: that is what "Out. Oxygenate." asks for.
  const over = [...linksOf(state.care.airway)].find(({ event }) => event === "tubeConfirmed" || event === "out");
  return Math.max(stopped, over?.seq ?? -1, provedTubeOut(state));
}

/**
 * Since when the patient does not breathe: from the first paralytic, the next blade, or as called, until the blade is out,
 * the tube is confirmed, the first CO2 comes through it, or it is called over. `undefined`: not now.
 */
export function selectApnoea(state: CaseState): Start | undefined {
  const { tube } = selectAirway(state);
  if (tube !== undefined && (tube.confirmed || hasCo2Since(state, tube))) return undefined;
  const end = lastEnd(state);
  const spoken = spokenStart(state, "apnoea");
  return earliestOf([...startsOf(state), ...(spoken === undefined ? [] : [spoken])].filter(({ seq }) => seq > end));
}
