import type { VitalCode } from "../../core/vitals.ts";
import type { SaidVital } from "../../language/intent.ts";
import type { SaidNumber } from "../../language/saidNumber.ts";
import type { SaidUnit, VitalValue } from "../../log/facts.ts";

/** A value as it was said, to be checked anew. */
export function asSaidVital(v: VitalValue): SaidVital {
  const { unit: _stored, said, value: _value, ...rest } = v;
  return { kind: "vital", ...rest, ...said };
}

/** The same value with another number, said bare: how and where it was taken stays. */
export function withNumber(v: VitalValue, number: SaidNumber, unit: SaidUnit | undefined): SaidVital {
  const { unit: _unit, ...rest } = asSaidVital(v);
  return { ...rest, value: number.value, words: number.words, ...(unit === undefined ? {} : { unit }) };
}

/** A bare number in the slot that a question or a correction gives it. */
export const inSlot = (code: VitalCode, number: SaidNumber, unit?: SaidUnit): SaidVital => ({
  kind: "vital",
  code,
  value: number.value,
  words: number.words,
  ...(unit === undefined ? {} : { unit }),
});
