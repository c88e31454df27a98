import { quantityOf, type Quantity, type QuantityError } from "./quantity.ts";
import type { Result } from "./result.ts";
import { VITALS, type StoredUnit, type VitalCode } from "./vitals.ts";

/** The brand of each stored unit. */
type UnitBrand = {
  "mm[Hg]": "mmHg";
  "/min": "/min";
  "%": "%";
  Cel: "Cel";
  "mmol/L": "mmol/L";
  "{score}": "score";
  mm: "mm";
  kg: "kg";
  cm: "cm";
  a: "years";
};

export type VitalQuantity<C extends VitalCode> = Quantity<UnitBrand[StoredUnit<C>]>;

/**
 * The checked door of one vital: narrower than that of its unit, since a systolic is never 5 mmHg while an ICP is.
 *
 * @param code  which vital.
 * @param value in its stored unit (`VITALS`).
 * @returns     the value with its unit. Errors: `not-a-number`, or `out-of-range` with the vital's entry limits.
 *
 * Not for: whether a value is good or bad for the patient.
 * Source: the limits are this project's check against mishearing.
 */
export const vitalQuantity = <C extends VitalCode>(code: C, value: number): Result<VitalQuantity<C>, QuantityError> =>
  quantityOf<UnitBrand[StoredUnit<C>]>(VITALS[code].limits)(value);
