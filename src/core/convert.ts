import { fail, ok, type Result } from "./result.ts";
import { VITALS, type UcumUnit, type VitalCode } from "./vitals.ts";

export type ConvertError =
  | { readonly kind: "not-a-number" }
  /** Nobody gives this vital in that unit. */
  | { readonly kind: "wrong-unit"; readonly code: VitalCode; readonly unit: string };

const PA_PER_MMHG = 133.322387415;
const PA_PER_CMH2O = 98.0665;
const MG_PER_DL_PER_MMOL_PER_L = 18.016;
const KG_PER_LB = 0.45359237;
const CM_PER_IN = 2.54;

type ToUnit = (said: number) => number;
const same: ToUnit = (n) => n;

/**
 * What each stored unit can be said in. Sources: pascals per conventional millimetre of mercury and per conventional
 * centimetre of water, the pound and the inch as in NIST SP 811, appendix B; glucose by its molar mass, 180.16 g/mol.
 */
const SAID_IN: Readonly<Record<UcumUnit, Readonly<Record<string, ToUnit>>>> = {
  "mm[Hg]": {
    mmHg: same,
    kPa: (n) => (n * 1000) / PA_PER_MMHG,
    cmH2O: (n) => (n * PA_PER_CMH2O) / PA_PER_MMHG,
  },
  "/min": { "/min": same },
  "%": { "%": same },
  Cel: { Cel: same, degF: (n) => ((n - 32) * 5) / 9 },
  "mmol/L": { "mmol/L": same, "mg/dL": (n) => n / MG_PER_DL_PER_MMOL_PER_L },
  "{score}": { "{score}": same },
  mm: { mm: same },
  kg: { kg: same, lb: (n) => n * KG_PER_LB },
  cm: { cm: same, in: (n) => n * CM_PER_IN },
  a: { a: same },
};

/**
 * Turns a value as said into the one unit in which its vital is stored.
 *
 * @param code  which vital; fixes the stored unit (`VITALS`).
 * @param value as said, in `unit`.
 * @param unit  as said, e.g. "kPa".
 * @returns     the value in the stored unit, unrounded; or `wrong-unit` where that vital is never said in it, or
 *              `not-a-number`.
 *
 * Not for: checking that the value is possible; see `withinLimits`.
 */
export function toCanonical(code: VitalCode, value: number, unit: string): Result<number, ConvertError> {
  if (!Number.isFinite(value)) return fail({ kind: "not-a-number" });
  const units = SAID_IN[VITALS[code].unit];
  const convert = Object.hasOwn(units, unit) ? units[unit] : undefined;
  return convert === undefined ? fail({ kind: "wrong-unit", code, unit }) : ok(convert(value));
}
