import { cerebralPerfusionPressure } from "./pressure.ts";
import type { MmHg } from "./quantity.ts";

export type CppRange = { readonly lowMmHg: MmHg; readonly highMmHg: MmHg };

/**
 * Between what perfusion pressure lies while ICP is only assumed.
 *
 * @param mapMmHg    mean arterial pressure, mmHg.
 * @param assumedIcp lowest and highest ICP that is assumed, mmHg.
 * @returns          CPP at the highest and at the lowest of them, mmHg, unrounded; negative where ICP exceeds MAP.
 *
 * Errors: none.
 * Not for: giving one number; without a measured ICP there is none.
 * Source: common practice, no source; MAP − ICP at both ends.
 */
export const cppRange = (mapMmHg: MmHg, assumedIcp: { readonly low: MmHg; readonly high: MmHg }): CppRange => ({
  lowMmHg: cerebralPerfusionPressure(mapMmHg, assumedIcp.high),
  highMmHg: cerebralPerfusionPressure(mapMmHg, assumedIcp.low),
});
