import { toCanonical } from "../../core/convert.ts";
import { withinLimits } from "../../core/plausible.ts";
import { VITALS, type VitalCode } from "../../core/vitals.ts";
import type { SaidVital } from "../../language/intent.ts";
import type { SaidUnit, VitalValue } from "../../log/facts.ts";
import { howTaken } from "../../log/statements.ts";

/**
 * Units in which a bare number of each vital is said, the usual one first. Where a second one is listed, a bare number
 * that fits it is never guessed at. Common practice, no source: teams mix kPa with mmHg, mg/dL with mmol/L.
 */
const BARE_UNITS: Readonly<Record<VitalCode, readonly [SaidUnit, ...SaidUnit[]]>> = {
  sbp: ["mmHg"],
  dbp: ["mmHg"],
  map: ["mmHg"],
  hr: ["/min"],
  rr: ["/min"],
  spo2: ["%"],
  etco2: ["mmHg", "kPa"],
  icp: ["mmHg"],
  temp: ["Cel", "degF"],
  glucose: ["mmol/L", "mg/dL"],
  gcsEye: ["{score}"],
  gcsVerbal: ["{score}"],
  gcsMotor: ["{score}"],
  pupilLeft: ["mm"],
  pupilRight: ["mm"],
  weight: ["kg"],
  height: ["cm", "in"],
  age: ["a"],
};

const withValue = (said: SaidVital, unit: SaidUnit, value: number): VitalValue => ({
  code: said.code,
  value,
  unit: VITALS[said.code].unit,
  said: { value: said.value, unit, words: said.words },
  ...howTaken(said),
});

/** The value in its stored unit, or `undefined` when that unit is not one of this vital's. Limits are not checked. */
export function inCanonicalUnit(said: SaidVital, unit: SaidUnit): VitalValue | undefined {
  const value = toCanonical(said.code, said.value, unit);
  return value.ok ? withValue(said, unit, value.value) : undefined;
}

/**
 * The unit that a bare number takes over from a value said before it: only one that has to be said or asked for. The
 * usual unit may itself have been taken for granted, so it is settled anew for the new number.
 */
export const inheritedUnit = ({ code, said }: VitalValue): SaidUnit | undefined =>
  said.unit === BARE_UNITS[code][0] ? undefined : said.unit;

/**
 * The units that a value could have, were its number another one: where its unit is the usual one, that may have been
 * taken for granted, and the other number may only fit a different one (glucose sixteen in mmol/L, sixty in mg/dL).
 */
export const unitsForAnother = ({ code, said }: VitalValue): readonly SaidUnit[] =>
  said.unit === BARE_UNITS[code][0] ? BARE_UNITS[code] : [said.unit];

export type UnitChoice =
  /** The unit is said, or only the usual one fits. */
  | { readonly kind: "settled"; readonly value: VitalValue }
  /** Ask: each of these is possible. */
  | { readonly kind: "ask"; readonly values: readonly [VitalValue, ...VitalValue[]] }
  /** Nothing fits the limits, or the unit is not one of this vital's: only good for saying what was wrong. */
  | { readonly kind: "outside"; readonly value: VitalValue };

/** Settles the unit of a value, or says which ones it could be. Never guesses between two that fit. */
export function chooseUnit(said: SaidVital): UnitChoice {
  if (said.unit !== undefined) {
    const value = inCanonicalUnit(said, said.unit);
    return value !== undefined && withinLimits(value.code, value.value)
      ? { kind: "settled", value }
      : { kind: "outside", value: value ?? withValue(said, said.unit, said.value) };
  }
  const units = BARE_UNITS[said.code];
  const fitting = units.flatMap((unit) => {
    const value = inCanonicalUnit(said, unit);
    return value !== undefined && withinLimits(value.code, value.value) ? [value] : [];
  });
  const [first, ...others] = fitting;
  if (first === undefined)
    return { kind: "outside", value: inCanonicalUnit(said, units[0]) ?? withValue(said, units[0], said.value) };
  return others.length === 0 && first.said.unit === units[0]
    ? { kind: "settled", value: first }
    : { kind: "ask", values: [first, ...others] };
}
