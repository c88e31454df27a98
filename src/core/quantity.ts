import { fail, ok, type Result } from "./result.ts";

declare const unitTag: unique symbol;

/** A number that remembers its unit at compile time and is a plain number at run time. */
export type Quantity<U extends string> = number & { readonly [unitTag]: U };
export type MmHg = Quantity<"mmHg">;
export type PerMin = Quantity<"/min">;
export type Percent = Quantity<"%">;

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
