import { toCanonical } from "../../core/convert.ts";
import { withinLimits } from "../../core/plausible.ts";
import type { VitalCode } from "../../core/vitals.ts";
import type { SaidUnit } from "../../log/facts.ts";
import type { Intent, SaidVital } from "../intent.ts";

/** Units a bare number of these vitals may have been meant in, besides the stored one. */
const OTHER_UNITS: Readonly<Partial<Record<VitalCode, SaidUnit>>> = {
  etco2: "kPa",
  icp: "cmH2O",
  temp: "degF",
  glucose: "mg/dL",
  weight: "lb",
  height: "in",
};

/**
 * Whether every vital named lies inside its entry limits (`VITALS`), in the unit said, or, where
 * none was said, in any unit it is usual in. Intents without vitals always do.
 */
export function couldBeInsideLimits(intent: Intent): boolean {
  return intent.kind !== "vitals" || intent.items.every((item) => item.kind !== "vital" || fits(item));
}

function fits({ code, value, unit }: SaidVital): boolean {
  if (unit === undefined && withinLimits(code, value)) return true;
  const other = unit ?? OTHER_UNITS[code];
  if (other === undefined) return false;
  const canonical = toCanonical(code, value, other);
  return canonical.ok && withinLimits(code, canonical.value);
}
