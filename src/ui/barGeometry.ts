import type { PerfusionBar } from "../app/screenView.ts";

/** A stretch of the bar, in per cent of its full length from the left. */
export type Stretch = { readonly startPct: number; readonly lengthPct: number };

export type BarGeometry = {
  /** ICP up to its measured value, or to the low end of the assumed range. */
  readonly icp: Stretch;
  /** From the low to the high end of the assumed range; without length when ICP is measured. */
  readonly icpRange: Stretch;
  /** What MAP leaves above ICP (above the high end when assumed). */
  readonly remainder: Stretch;
  /** What is missing from MAP to the target; without length when the target is met. */
  readonly missing: Stretch;
  readonly targetPct: number;
};

/**
 * Lays out MAP = ICP + CPP as lengths. No part reaches beyond the end of the scale, and ICP never beyond MAP:
 * with MAP below ICP nothing remains.
 *
 * @param bar pressures in mmHg from zero; `scaleMaxMmHg` above zero.
 */
export function barGeometry(bar: PerfusionBar): BarGeometry {
  const placePct = (mmHg: number) => (Math.min(Math.max(mmHg, 0), bar.scaleMaxMmHg) / bar.scaleMaxMmHg) * 100;
  const stretch = (startPct: number, endPct: number): Stretch => ({
    startPct,
    lengthPct: Math.max(endPct - startPct, 0),
  });

  const mapPct = placePct(bar.mapMmHg);
  const lowPct = Math.min(placePct(bar.icp.lowMmHg), mapPct);
  const highPct = Math.min(placePct(bar.icp.highMmHg), mapPct);
  const targetPct = placePct(bar.targetMmHg);
  return {
    icp: stretch(0, lowPct),
    icpRange: stretch(lowPct, highPct),
    remainder: stretch(highPct, mapPct),
    missing: stretch(mapPct, targetPct),
    targetPct,
  };
}
