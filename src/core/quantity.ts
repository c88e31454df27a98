import { fail, ok, type Result } from "./result.ts";

declare const unitTag: unique symbol;

/** A number that remembers its unit at compile time and is a plain number at run time. */
export type Quantity<U extends string> = number & { readonly [unitTag]: U };
export type MmHg = Quantity<"mmHg">;
export type KPa = Quantity<"kPa">;
export type CmH2O = Quantity<"cmH2O">;
export type PerMin = Quantity<"/min">;
export type Percent = Quantity<"%">;
/** A part of the whole, 0 to 1: never a percentage. */
export type Fraction = Quantity<"fraction">;
export type Kg = Quantity<"kg">;
export type Cm = Quantity<"cm">;
export type Mm = Quantity<"mm">;
export type Years = Quantity<"years">;
/** Degrees Celsius. */
export type Cel = Quantity<"Cel">;
export type MmolPerL = Quantity<"mmol/L">;
export type Score = Quantity<"score">;
export type Ml = Quantity<"mL">;
export type L = Quantity<"L">;
export type LPerMin = Quantity<"L/min">;
export type MlPerMin = Quantity<"mL/min">;
export type MlPerKg = Quantity<"mL/kg">;
/** An angle. */
export type Degrees = Quantity<"deg">;
export type Minutes = Quantity<"min">;
export type Seconds = Quantity<"s">;

export type Limits = { readonly min: number; readonly max: number };

export type QuantityError =
  { readonly kind: "not-a-number" } | { readonly kind: "out-of-range"; readonly min: number; readonly max: number };

/** Makes the one checked door into a unit. Limits are inclusive. */
export function quantityOf<U extends string>(limits: Limits) {
  return (n: number): Result<Quantity<U>, QuantityError> => {
    if (!Number.isFinite(n)) return fail({ kind: "not-a-number" });
    if (n < limits.min || n > limits.max) return fail({ kind: "out-of-range", ...limits });
    return ok(n as Quantity<U>);
  };
}
