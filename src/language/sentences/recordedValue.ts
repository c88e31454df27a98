import { fromCanonical } from "../../core/convert.ts";
import { VITALS } from "../../core/vitals.ts";
import type { VitalValue } from "../../log/facts.ts";
import { saySaid, sayVital, showIn, showValue } from "./vital.ts";

/** Which unit is usual where there are two: a matter of the region. */
export type UsualUnits = { readonly co2: "mmHg" | "kPa"; readonly glucose: "mmol/L" | "mg/dL" };

type Recorded = Pick<VitalValue, "code" | "value" | "said" | "method">;

/** Decimals where a value is not given in its stored unit. */
const DECIMALS = { kPa: 1, "mg/dL": 0, mo: 0 } as const;

/** The unit in which a value is given, where that is not the one it is stored in. */
function otherUnit({ code, said }: Recorded, usual: UsualUnits): keyof typeof DECIMALS | undefined {
  if (code === "etco2") return usual.co2 === "kPa" ? "kPa" : undefined;
  if (code === "glucose") return usual.glucose === "mg/dL" ? "mg/dL" : undefined;
  // An age said in months is never given in years: that would round it away.
  return code === "age" && said.unit === "mo" ? "mo" : undefined;
}

function inOtherUnit(v: Recorded, usual: UsualUnits) {
  const unit = otherUnit(v, usual);
  const converted = unit && fromCanonical(v.code, v.value, unit);
  return unit === undefined || converted?.ok !== true
    ? undefined
    : { value: converted.value, unit, decimals: DECIMALS[unit] };
}

/**
 * A recorded value as it is read back, in the unit that is usual here: "end tidal thirty eight", "end tidal five point one
 * kilopascals". Where it was said in another unit, that is said too: "…, from five kilopascals".
 */
export function sayRecorded(v: Recorded, usual: UsualUnits): string {
  const other = inOtherUnit(v, usual);
  const given =
    other === undefined
      ? sayVital(v.code, v.value)
      : `${VITALS[v.code].spokenName} ${saySaid(v.code, other.value, other.unit, other.decimals)}`;
  const asSaid = other === undefined ? v.said.value === v.value : v.said.unit === other.unit;
  const guessed = v.method === "estimated" ? `estimated ${given}` : given;
  return asSaid ? guessed : `${guessed}, from ${saySaid(v.code, v.said.value, v.said.unit)}`;
}

/** A recorded value as printed, without its label: "38 mmHg", "5.1 kPa", "6 months". */
export function showRecorded(v: Recorded, usual: UsualUnits): string {
  const other = inOtherUnit(v, usual);
  const shown = other === undefined ? showValue(v.code, v.value) : showIn(other.value, other.unit, other.decimals);
  return v.method === "estimated" ? `${shown}, estimated` : shown;
}
