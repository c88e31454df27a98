import type { Concentration } from "./concentration.ts";
import { convertAmount, type UnitMismatch } from "./doseAmount.ts";
import type { DoseUnit, RateUnit } from "./doseUnits.ts";
import { quantityOf, type Kg, type Quantity, type QuantityError } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";

/** How fast a drug is to run, as ordered. Only `infusionRate` makes one. */
export type InfusionRate = { readonly value: Quantity<"rate">; readonly unit: RateUnit };
export type MlPerH = Quantity<"mL/h">;

/** What a pump may be set to. A stopped pump has no rate. This project's check against slips, not clinical. */
export const mlPerH = quantityOf<"mL/h">({ min: 1e-4, max: 2e4 });
const ordered = quantityOf<"rate">({ min: 1e-6, max: 1e5 });

const MIN_PER_H = 60;
const PARTS: Readonly<Record<RateUnit, { readonly of: DoseUnit; readonly perKg: boolean; readonly perH: number }>> = {
  "mcg/kg/min": { of: "mcg", perKg: true, perH: MIN_PER_H },
  "mcg/min": { of: "mcg", perKg: false, perH: MIN_PER_H },
  "mcg/kg/h": { of: "mcg", perKg: true, perH: 1 },
  "mg/kg/h": { of: "mg", perKg: true, perH: 1 },
  "mg/min": { of: "mg", perKg: false, perH: MIN_PER_H },
  "mg/h": { of: "mg", perKg: false, perH: 1 },
  "g/h": { of: "g", perKg: false, perH: 1 },
  "units/min": { of: "units", perKg: false, perH: MIN_PER_H },
  "units/h": { of: "units", perKg: false, perH: 1 },
  "mL/kg/h": { of: "mL", perKg: true, perH: 1 },
  "mL/h": { of: "mL", perKg: false, perH: 1 },
};

/** What a rate needs besides its number: a weight where it is for each kilogram, a concentration where it is of drug. */
export type RunningWith = { readonly kg?: Kg | undefined; readonly concentration?: Concentration | undefined };

export type RateError =
  | QuantityError
  | UnitMismatch
  | { readonly kind: "needs-kg"; readonly unit: RateUnit }
  | { readonly kind: "needs-concentration"; readonly unit: RateUnit };

/**
 * The one checked door to an ordered rate.
 *
 * @param value in `unit`, above zero.
 * @param unit  as ordered.
 * @returns     the rate; or `not-a-number`, or `out-of-range` with the limits, ends included.
 *
 * Not for: whether the rate is right for anybody.
 */
export function infusionRate(value: number, unit: RateUnit): Result<InfusionRate, QuantityError> {
  const checked = ordered(value);
  return checked.ok ? ok({ value: checked.value, unit }) : checked;
}

/** True for "mcg/kg/min" and the like. */
export const isPerKg = (unit: RateUnit): boolean => PARTS[unit].perKg;

/** How many mL/h a rate of 1 is. */
function mlPerHOfOne(unit: RateUnit, { kg, concentration }: RunningWith): Result<number, RateError> {
  const { of, perKg, perH } = PARTS[unit];
  if (perKg && kg === undefined) return fail({ kind: "needs-kg", unit });
  const amountPerH = perH * ((perKg ? kg : undefined) ?? 1);
  if (of === "mL") return ok(amountPerH);
  if (concentration === undefined) return fail({ kind: "needs-concentration", unit });
  const drug = convertAmount(concentration.amount, of);
  return drug.ok ? ok((amountPerH * concentration.volumeMl) / drug.value.value) : drug;
}

/**
 * What to set the pump to.
 *
 * @param rate as ordered.
 * @param by   weight, kg, where the rate is for each kilogram; concentration where it is not of fluid.
 * @returns    rate × kg × 60 / concentration, mL/h, unrounded; without kg or 60 where the unit has none.
 *
 * Errors: `needs-kg`, `needs-concentration`, `unit-mismatch`; `out-of-range` where no pump runs like that.
 * Not for: choosing the rate.
 * Source: arithmetic of units, common practice.
 */
export function pumpRate(rate: InfusionRate, by: RunningWith): Result<MlPerH, RateError> {
  const one = mlPerHOfOne(rate.unit, by);
  return one.ok ? mlPerH(rate.value * one.value) : one;
}

/**
 * What a pump that is running gives.
 *
 * @param runningMlPerH as the pump is set, mL/h.
 * @param unit          in which the answer is wanted.
 * @param by            weight, kg, where that unit is for each kilogram; concentration where it is not of fluid.
 * @returns             mL/h × concentration / (kg × 60), in `unit`, unrounded; without kg or 60 where it has none.
 *
 * Errors: as `pumpRate`.
 * Source: `pumpRate` solved for the rate.
 */
export function orderedRate(runningMlPerH: MlPerH, unit: RateUnit, by: RunningWith): Result<InfusionRate, RateError> {
  const one = mlPerHOfOne(unit, by);
  return one.ok ? infusionRate(runningMlPerH / one.value, unit) : one;
}
