import { linksOf } from "../../log/chains.ts";
import type { CaseState } from "../../log/caseState.ts";

type Moment = { readonly atMs: number; readonly seq: number };

/** From a tube that went in until it came out. */
export type TubeSpan = {
  readonly in: Moment;
  /** None: it is in at the end of the record. */
  readonly out: Moment | undefined;
  /** When it was called confirmed. */
  readonly confirmed: Moment | undefined;
  /** When it was called confirmed or first gave CO2, whichever came first. */
  readonly proved: Moment | undefined;
};

/** The first CO2 that came through it. */
function firstCo2(state: CaseState, tube: Omit<TubeSpan, "proved">): Moment | undefined {
  let first: Moment | undefined;
  for (const { entry } of linksOf(state.vitals.etco2)) {
    if (entry.seq < tube.in.seq) break;
    if (entry.seq < (tube.out?.seq ?? Infinity)) first = entry;
  }
  return first;
}

function withProof(state: CaseState, tube: Omit<TubeSpan, "proved">): TubeSpan {
  const proofs = [tube.confirmed, firstCo2(state, tube)].flatMap((proof) => proof ?? []);
  const [proved] = proofs.toSorted((a, b) => a.seq - b.seq);
  return { ...tube, proved };
}

/** Every tube of the case, oldest first, by what was called at the airway. A blade over a tube that nobody called confirmed gives it up. */
export function selectTubes(state: CaseState): readonly TubeSpan[] {
  const tubes: Omit<TubeSpan, "proved">[] = [];
  let tube: Omit<TubeSpan, "proved"> | undefined;
  for (const { event, atMs, seq } of [...linksOf(state.care.airway)].toReversed()) {
    const now = { atMs, seq };
    if (event === "tubeIn" || event === "tubeConfirmed") {
      tube ??= { in: now, out: undefined, confirmed: undefined };
      if (event === "tubeConfirmed" && tube.confirmed === undefined) tube = { ...tube, confirmed: now };
    } else if (tube !== undefined && (event === "tubeOut" || (event === "bladeIn" && tube.confirmed === undefined))) {
      tubes.push({ ...tube, out: now });
      tube = undefined;
    }
  }
  return (tube === undefined ? tubes : [...tubes, tube]).map((one) => withProof(state, one));
}

/** The first tube that was called confirmed or gave CO2. */
export const selectFirstProvedTube = (state: CaseState): (TubeSpan & { readonly proved: Moment }) | undefined => {
  for (const tube of selectTubes(state)) if (tube.proved !== undefined) return { ...tube, proved: tube.proved };
  return undefined;
};
