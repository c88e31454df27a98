import { amount, convertAmount, isOver, type Amount } from "../core/doseAmount.ts";
import { compareDose } from "../core/doseCompare.ts";
import { repeatState, type RepeatState } from "../core/doseRepeat.ts";
import type { SaidAmount } from "../log/careFacts.ts";
import type { CaseState } from "../log/caseState.ts";
import { selectGiven } from "../log/totals.ts";
import type { Dose, Protocol } from "../protocol/protocol.ts";
import type { DrugPlan } from "./drugPlan.ts";

export type GivenCheck = {
  /** Further off the plan than the protocol lets pass. */
  readonly farOff: boolean;
  /** The most at once, where it is exceeded. */
  readonly overCap: Amount | undefined;
};

/**
 * A given amount against plan and cap.
 *
 * @returns what is to be asked back; nothing where the amount is not in a unit of the plan, so that it cannot be compared.
 */
export function checkGiven(protocol: Protocol, { dose, planned }: DrugPlan, given: SaidAmount): GivenCheck | undefined {
  const said = amount(given.value, given.unit);
  if (!said.ok) return undefined;
  const cap = dose.cap === undefined ? undefined : amount(dose.cap, dose.unit);
  const most = cap?.ok ? cap.value : undefined;
  const compared = compareDose(said.value, planned.usual, most);
  if (!compared.ok) return undefined;
  const { percentOff, overCap } = compared.value;
  const farOff = isOver(Math.abs(percentOff), protocol.doses.askBackOverPct.value);
  return { farOff, overCap: overCap ? most : undefined };
}

/** Whether two amounts are of one kind, mass, units, millimoles or volume. */
export function isSameKind(a: SaidAmount, unit: SaidAmount["unit"]): boolean {
  const checked = amount(a.value, a.unit);
  return checked.ok && convertAmount(checked.value, unit).ok;
}

/** Where a dose of the protocol stands that may be given again. */
export const doseRepeats = (state: CaseState, drugId: string, dose: Dose): RepeatState =>
  repeatState(
    dose,
    selectGiven(state, drugId).flatMap(({ doseId, atMs }) => (doseId === dose.id ? [atMs] : [])),
  );
