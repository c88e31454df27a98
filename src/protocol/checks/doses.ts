import { VITALS } from "../../core/vitals.ts";
import { lowToHigh, when, type Faults, type Place } from "../fault.ts";
import type { Dose, Infusion } from "../protocol.ts";

type Amounts = { readonly low: number; readonly usual: number; readonly high: number };

function checkAmounts({ low, usual, high }: Amounts, unit: string, at: Place): Faults {
  return [
    ...when(usual < low, [...at, "usual"], `${usual} ${unit} is below the lowest dose of ${low} ${unit}`),
    ...when(high < usual, [...at, "high"], `${high} ${unit} is below the usual dose of ${usual} ${unit}`),
  ];
}

/** A weight is named where the amount is for each kilogram, and only there. */
function checkWeight(weight: string | undefined, isPerKg: boolean, at: Place): Faults {
  return [
    ...when(isPerKg && weight === undefined, [...at, "weight"], "is missing: the amount is for each kilogram"),
    ...when(!isPerKg && weight !== undefined, [...at, "weight"], "has no meaning: the amount is not for each kilogram"),
  ];
}

/** Limits that leave room for the dose: one that cuts off even the smallest would always be the dose. */
function checkCaps(dose: Dose, at: Place): Faults {
  const { per, unit, low, high, shock, minimum, cap, fromKg } = dose;
  const lightestKg = per === "kg" ? (fromKg ?? VITALS.weight.limits.min) : 1;
  const lowest = Math.min(low, shock?.low ?? low) * lightestKg;
  const highest = Math.max(high, shock?.high ?? high);
  return [
    ...when(
      minimum !== undefined && per === "dose" && minimum > highest,
      [...at, "minimum"],
      `${minimum ?? ""} ${unit} is above the highest dose of ${highest} ${unit}`,
    ),
    ...when(
      cap !== undefined && cap < lowest,
      [...at, "cap"],
      `${cap ?? ""} ${unit} is below the lowest dose of ${lowest} ${unit}`,
    ),
    ...when(
      cap !== undefined && minimum !== undefined && cap < minimum,
      [...at, "cap"],
      `${cap ?? ""} ${unit} is below the minimum of ${minimum ?? ""} ${unit}`,
    ),
  ];
}

/** One dose by itself: its amounts in order, its limits with room, its weight where it needs one. */
export function checkDose(dose: Dose, at: Place): Faults {
  const { per, unit, shock, weight, fromKg, belowKg, overS, repeatAfterS, mostDoses } = dose;
  const shownUnit = per === "kg" ? `${unit}/kg` : unit;
  return [
    ...checkAmounts(dose, shownUnit, at),
    ...(shock === undefined ? [] : checkAmounts(shock, shownUnit, [...at, "shock"])),
    ...checkWeight(weight, per === "kg", at),
    ...when(
      fromKg !== undefined && belowKg !== undefined && belowKg <= fromKg,
      [...at, "belowKg"],
      `${belowKg ?? ""} kg is not above ${fromKg ?? ""} kg, from where this dose counts`,
    ),
    ...checkCaps(dose, at),
    ...(overS === undefined ? [] : lowToHigh(overS, [...at, "overS"])),
    ...(repeatAfterS === undefined ? [] : lowToHigh(repeatAfterS, [...at, "repeatAfterS"])),
    ...when(
      mostDoses !== undefined && !Number.isInteger(mostDoses),
      [...at, "mostDoses"],
      `must be a whole number, not ${mostDoses ?? ""}`,
    ),
  ];
}

export function checkInfusion({ low, start, high, unit, weight }: Infusion, at: Place): Faults {
  return [
    ...when(start < low, [...at, "start"], `${start} ${unit} is below the lowest rate of ${low} ${unit}`),
    ...when(high < start, [...at, "high"], `${high} ${unit} is below the starting rate of ${start} ${unit}`),
    ...checkWeight(weight, unit.includes("/kg"), at),
  ];
}
