import type { DoseTotal } from "../../core/doseTotals.ts";
import type { RepeatState } from "../../core/doseRepeat.ts";
import type { SaidAmount } from "../../log/careFacts.ts";
import type { GivenTotal } from "../../log/totals.ts";
import type { DrugPlan } from "../../rules/drugPlan.ts";
import type { GivenCheck } from "../../rules/givenCheck.ts";
import type { OsmoticEnd } from "../../rules/osmoticEnd.ts";
import { sayAmount, sayAmountOnce, sayMlOnce, spokenAmount } from "./amount.ts";
import { sayDoseUnit } from "./doseUnit.ts";
import { roundedDose, sayExactlyTwoWays, sayNumber } from "./number.ts";
import { sentences } from "./sentence.ts";
import { sayAge } from "./vital.ts";

type Asked = {
  readonly name: string;
  readonly amount: SaidAmount;
  /** As it was said, where the amount was worked out from it. */
  readonly saidMl?: number;
  /** None: nothing to compare with. */
  readonly plan: DrugPlan | undefined;
  readonly check: GivenCheck | undefined;
  readonly repeats: RepeatState | undefined;
  readonly nowMs: number;
};

/** Sooner after the last one than the protocol repeats it. */
function sayEarly(repeats: RepeatState | undefined, nowMs: number): string | undefined {
  const waitMs = (repeats?.earliestNextAtMs ?? nowMs) - nowMs;
  return waitMs > 0 ? `The earliest next is in ${sayAge(waitMs)}` : undefined;
}

/** Several purposes: which of them is meant is said. */
const named = (name: string, plan: DrugPlan | undefined): string =>
  plan !== undefined && plan.others > 0 ? `${name}, ${plan.dose.purpose}` : name;

/** The read-back of a dose that is said to be given, with what speaks against it. */
export function askGiven({ name, amount, saidMl, plan, check, repeats, nowMs }: Asked): string {
  const volume = saidMl === undefined ? "" : ` in ${sayMlOnce(saidMl)},`;
  const given = sayAmount(amount);
  return sentences(
    `${named(name, plan)}, ${given},${volume} given?`,
    plan === undefined ? "No plan to compare with" : undefined,
    plan !== undefined && check?.farOff ? `Plan was ${sayAmount(spokenAmount(plan.planned.usual))}` : undefined,
    check?.overCap && `Over the cap of ${sayAmount(spokenAmount(check.overCap))}`,
    sayEarly(repeats, nowMs),
    repeats?.mostReached ? `${sayDoses(repeats.count)} before it: the most` : undefined,
  );
}

export const askHowMuch = (name: string): string => sentences(`${name}, how much was given?`);

export const askAmountUnit = (name: string, value: number, units: readonly string[]): string =>
  sentences(`${name} ${sayExactlyTwoWays(value)}: ${units.map(sayDoseUnit).join(", or ")}?`);

/** The amount is of another kind than the drug is ordered in. */
export const refuseAmountUnit = (name: string, unit: string): string =>
  sentences(`${name} is given in ${sayDoseUnit(unit)}`, "Say it again");

const sayDoses = (count: number): string => `${sayNumber(count, 0)} ${count === 1 ? "dose" : "doses"}`;

const sayTotalAmount = ({ value, unit }: DoseTotal): string => sayAmountOnce({ value: roundedDose(value), unit });

/** "Three hundred micrograms, three doses". */
export function sayDrugTotal(name: string, total: GivenTotal | undefined): string {
  if (total === undefined) return sentences(`No ${name} given`);
  if (!total.ok) return sentences(`${name}: given in units that have no sum`);
  return sentences(`${name} ${sayTotalAmount(total.value)}, ${sayDoses(total.value.count)}`);
}

/** Where a dose that is taken back leaves the total. */
export const sayTotalLeft = (name: string, total: GivenTotal | undefined): string =>
  total?.ok ? sentences(`Total now ${sayTotalAmount(total.value)}`) : sayDrugTotal(name, total);

type After = {
  readonly name: string;
  readonly amount: SaidAmount;
  readonly total: GivenTotal | undefined;
  readonly repeats: RepeatState | undefined;
  readonly ends: OsmoticEnd | undefined;
  readonly nowMs: number;
};

function sayRepeats(repeats: RepeatState | undefined, nowMs: number): string | undefined {
  if (repeats === undefined) return undefined;
  if (repeats.mostReached) return "No more of this dose";
  const { earliestNextAtMs } = repeats;
  return earliestNextAtMs === undefined ? undefined : `Next in ${sayAge(earliestNextAtMs - nowMs)} at the earliest`;
}

function sayEnds(ends: OsmoticEnd | undefined, nowMs: number): string | undefined {
  if (ends === undefined) return undefined;
  const [from, to] = [sayAge(ends.earliestAtMs - nowMs), sayAge(ends.atMs - nowMs)];
  return from === to ? `Ends in ${to}` : `Ends in ${from} to ${to}`;
}

/** What a given dose leads to: the running total, the earliest next one, and the end of an infusion. */
export const sayGiven = ({ name, amount, total, repeats, ends, nowMs }: After): string =>
  sentences(
    `${name} ${sayAmountOnce(amount)} given`,
    total?.ok && total.value.count > 1
      ? `Total ${sayTotalAmount(total.value)}, ${sayDoses(total.value.count)}`
      : total?.ok === false
        ? "No total: its doses are in units that have no sum"
        : undefined,
    sayRepeats(repeats, nowMs),
    sayEnds(ends, nowMs),
  );

/** "Push dose given" names no drug. */
export const askWhichPush = (names: readonly string[]): string =>
  names.length === 0
    ? "No push dose has an affirmed concentration. Name the drug."
    : sentences(`${names.join(", or ")}? Name the drug`);
