import {
  addReading,
  lowPressureTotals,
  startLowPressure,
  type LowPressureError,
  type LowPressureTotals,
  type PressureReading,
} from "./lowPressure.ts";
import type { MmHg } from "./quantity.ts";
import { ok, type Result } from "./result.ts";

/**
 * How deep and how long a pressure was low over a whole series.
 *
 * @param series         pressures, mmHg, in the order of their times, Unix ms.
 * @param floorMmHg      the pressure to keep, mmHg. A pressure equal to it is not low.
 * @param unknownAfterMs readings further apart than this leave the time between them unknown, ms.
 * @returns              dose in mmHg·min and times in minutes, unrounded; all 0 for an empty series.
 *
 * Errors: `not-a-time`, `not-in-order`; those of the first reading that `addReading` refuses.
 * Not for: a running case; `addReading` takes one reading at a time at the same cost however long the case.
 * Source: Spaite DW et al. Hypotension depth and duration. Ann Emerg Med 2017;70:522-530, for the integral of depth over
 * time; the straight line between readings and the limit on gaps are common practice, no source.
 */
export function lowPressureDose(
  series: readonly PressureReading[],
  floorMmHg: MmHg,
  unknownAfterMs: number,
): Result<LowPressureTotals, LowPressureError> {
  let sum = startLowPressure(floorMmHg, unknownAfterMs);
  for (const reading of series) {
    const next = addReading(sum, reading);
    if (!next.ok) return next;
    sum = next.value;
  }
  return ok(lowPressureTotals(sum));
}
