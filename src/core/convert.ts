import { PA_PER_MMHG } from "./physicalConstants.ts";
import { fail, ok, type Result } from "./result.ts";
import { VITALS, type UcumUnit, type VitalCode } from "./vitals.ts";

export type ConvertError =
  /** Not finite, before or after. */
  | { readonly kind: "not-a-number" }
  /** Nobody gives this vital in that unit. */
  | { readonly kind: "wrong-unit"; readonly code: VitalCode; readonly unit: string };

const PA_PER_CMH2O = 98.0665;
const MG_PER_DL_PER_MMOL_PER_L = 18.016;
const KG_PER_LB = 0.45359237;
const CM_PER_IN = 2.54;
const MONTHS_PER_YEAR = 12;

/** stored = (said − zero) × times / per. Kept as a fraction: 5 / 9 is no double, and 98.6 °F should be 37. */
type Scale = { readonly zero: number; readonly times: number; readonly per: number };
const scale = (times: number, per: number, zero = 0): Scale => ({ zero, times, per });
const SAME = scale(1, 1);

/**
 * What each stored unit can be said in. Sources, all from memory: pascals per conventional millimetre of mercury and per
 * conventional centimetre of water, the pound and the inch as in NIST SP 811, appendix B; glucose by its molar mass,
 * 180.16 g/mol; a month as a twelfth of a year, as in UCUM.
 */
const SAID_IN: Readonly<Record<UcumUnit, Readonly<Record<string, Scale>>>> = {
  "mm[Hg]": { mmHg: SAME, kPa: scale(1000, PA_PER_MMHG), cmH2O: scale(PA_PER_CMH2O, PA_PER_MMHG) },
  "/min": { "/min": SAME },
  "%": { "%": SAME },
  Cel: { Cel: SAME, degF: scale(5, 9, 32) },
  "mmol/L": { "mmol/L": SAME, "mg/dL": scale(1, MG_PER_DL_PER_MMOL_PER_L) },
  "{score}": { "{score}": SAME },
  mm: { mm: SAME },
  kg: { kg: SAME, lb: scale(KG_PER_LB, 1) },
  cm: { cm: SAME, in: scale(CM_PER_IN, 1) },
  a: { a: SAME, mo: scale(1, MONTHS_PER_YEAR) },
};

const finite = (n: number): Result<number, ConvertError> =>
  Number.isFinite(n) ? ok(n) : fail({ kind: "not-a-number" });

function scaleOf(code: VitalCode, unit: string): Result<Scale, ConvertError> {
  const units = SAID_IN[VITALS[code].unit];
  const found = Object.hasOwn(units, unit) ? units[unit] : undefined;
  return found === undefined ? fail({ kind: "wrong-unit", code, unit }) : ok(found);
}

/**
 * Turns a value as said into the one unit in which its vital is stored.
 *
 * @param code  which vital; fixes the stored unit (`VITALS`).
 * @param value as said, in `unit`.
 * @param unit  as said, e.g. "kPa".
 * @returns     the value in the stored unit, unrounded. Errors: `wrong-unit` where that vital is never said in it,
 *              `not-a-number`.
 *
 * Not for: checking that the value is possible; see `withinLimits`.
 * Source: see `SAID_IN`.
 */
export function toCanonical(code: VitalCode, value: number, unit: string): Result<number, ConvertError> {
  const found = scaleOf(code, unit);
  if (!found.ok) return found;
  const { zero, times, per } = found.value;
  return finite(((value - zero) * times) / per);
}

/**
 * Turns a stored value into another unit of its vital, to show or say it the way the region does.
 *
 * @param code  which vital; fixes the stored unit (`VITALS`).
 * @param value in the stored unit.
 * @param unit  wanted, e.g. "kPa".
 * @returns     the value in `unit`, unrounded. Errors: `wrong-unit` where that vital is never said in it, `not-a-number`.
 *
 * Not for: giving back what was said; a fact keeps that beside the stored value.
 * Source: the inverse of `toCanonical`.
 */
export function fromCanonical(code: VitalCode, value: number, unit: string): Result<number, ConvertError> {
  const found = scaleOf(code, unit);
  if (!found.ok) return found;
  const { zero, times, per } = found.value;
  return finite((value * per) / times + zero);
}
