import type { CaseState } from "../../log/caseState.ts";
import { linksOf } from "../../log/chains.ts";
import { earliestOf, givenOf, SEDATIVES } from "../../log/given.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { known, unknown, type Measured } from "./measured.ts";
import { selectFirstProvedTube } from "./tubeSpans.ts";

/** Infusions of sedatives as they were set, in no order. */
const settings = ({ care }: CaseState) =>
  Object.values(care.infusions).flatMap((newest) =>
    SEDATIVES.includes(newest.drugClass) ? [[...linksOf(newest)]] : [],
  );

/** Whether an infusion of a sedative ran when this fact was recorded. */
const ranAt = (state: CaseState, seq: number): boolean =>
  settings(state).some((chain) => (chain.find((set) => set.seq < seq)?.rate.value ?? 0) > 0);

/**
 * Minutes from the first tube that was proved to the first sedative after it, given at once or begun as an infusion; 0 where
 * one ran already. What was answered to a step without a drug has no time and does not count.
 */
export function selectSedationMin({ state }: RecordedCase): Measured<number> {
  const tube = selectFirstProvedTube(state);
  if (tube === undefined) return unknown("tube-not-proved");
  const { seq, atMs } = tube.proved;
  if (ranAt(state, seq)) return known(0);
  const begun = settings(state).flatMap((chain) => chain.filter(({ rate }) => rate.value > 0));
  const first = earliestOf([...givenOf(state, SEDATIVES), ...begun].filter((sedative) => sedative.seq > seq));
  if (first === undefined) return unknown("no-sedation");
  return first.atMs < atMs ? unknown("times-out-of-order") : known((first.atMs - atMs) / 60_000);
}
