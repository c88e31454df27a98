import { amount, type Amount, type UnitMismatch } from "../core/doseAmount.ts";
import { totalGiven, type DoseTotal } from "../core/doseTotals.ts";
import type { QuantityError } from "../core/quantity.ts";
import type { Result } from "../core/result.ts";
import type { GivenEntry } from "./careState.ts";
import type { CaseState } from "./caseState.ts";
import { linksOf } from "./chains.ts";

type Care = Pick<CaseState, "care">;

/** What was affirmed as given of one drug, oldest first. */
export const selectGiven = ({ care }: Care, drugId: string): readonly GivenEntry[] =>
  [...linksOf(care.given[drugId])].toReversed();

export type GivenTotal = Result<DoseTotal, UnitMismatch | QuantityError>;

/**
 * What was given of one drug since the case began, in the unit of its first dose. Only what was affirmed is in the log, so
 * nothing else counts.
 *
 * @returns nothing where none was given; `unit-mismatch` where the doses are of two kinds and have no sum.
 */
export function selectTotal(state: Care, drugId: string): GivenTotal | undefined {
  const given = selectGiven(state, drugId);
  const [first] = given;
  if (first === undefined) return undefined;
  const amounts: Amount[] = [];
  for (const { amount: said } of given) {
    const checked = amount(said.value, said.unit);
    if (!checked.ok) return checked;
    amounts.push(checked.value);
  }
  return totalGiven(amounts, first.amount.unit);
}

/** The drugs of which something was given, in the order first given, with their totals. */
export function selectTotals(state: Care): readonly { readonly drugId: string; readonly total: GivenTotal }[] {
  const firstSeq = (drugId: string): number => selectGiven(state, drugId)[0]?.seq ?? 0;
  return Object.keys(state.care.given)
    .toSorted((a, b) => firstSeq(a) - firstSeq(b))
    .flatMap((drugId) => {
      const total = selectTotal(state, drugId);
      return total === undefined ? [] : [{ drugId, total }];
    });
}

export type FluidTotal = { readonly fluidId: string; readonly volumeMl: number; readonly count: number };

/** What ran in of one fluid since the case began, mL; 0 of 0 for none. */
export function selectFluidTotal({ care }: Care, fluidId: string): FluidTotal {
  const entries = [...linksOf(care.fluids[fluidId])];
  return { fluidId, volumeMl: entries.reduce((sum, { volumeMl }) => sum + volumeMl, 0), count: entries.length };
}

export const selectFluidTotals = (state: Care): readonly FluidTotal[] =>
  Object.keys(state.care.fluids).map((fluidId) => selectFluidTotal(state, fluidId));
