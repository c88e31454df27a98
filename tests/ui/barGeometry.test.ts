import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { PerfusionBar } from "../../src/app/screenView.ts";
import { barGeometry } from "../../src/ui/barGeometry.ts";

const bar = (mapMmHg: number, lowMmHg: number, highMmHg: number, targetMmHg: number): PerfusionBar => ({
  scaleMaxMmHg: 100, // so that a length in per cent is the length in mmHg
  mapMmHg,
  icp: { kind: lowMmHg === highMmHg ? "measured" : "assumed", lowMmHg, highMmHg },
  targetMmHg,
  description: "",
});

/** Lengths that follow from MAP = ICP + CPP; worked by hand. */
const ROWS = [
  { name: "measured ICP, under target", given: bar(70, 20, 20, 90), icp: 20, range: 0, remainder: 50, missing: 20 },
  { name: "measured ICP, over target", given: bar(95, 20, 20, 90), icp: 20, range: 0, remainder: 75, missing: 0 },
  { name: "assumed ICP", given: bar(70, 15, 30, 90), icp: 15, range: 15, remainder: 40, missing: 20 },
  { name: "MAP inside the assumed range", given: bar(20, 15, 30, 90), icp: 15, range: 5, remainder: 0, missing: 70 },
  { name: "MAP below ICP", given: bar(10, 15, 30, 90), icp: 10, range: 0, remainder: 0, missing: 80 },
  { name: "MAP beyond the scale", given: bar(130, 20, 20, 90), icp: 20, range: 0, remainder: 80, missing: 0 },
];

describe("barGeometry", () => {
  it.each(ROWS)("$name", ({ given, icp, range, remainder, missing }) => {
    const parts = barGeometry(given);
    expect([parts.icp, parts.icpRange, parts.remainder, parts.missing].map((part) => part.lengthPct)).toEqual([
      icp,
      range,
      remainder,
      missing,
    ]);
  });

  it("lays the parts end to end from zero to MAP, within the scale, whatever the values", () => {
    const mmHg = fc.double({ min: -50, max: 400, noNaN: true });
    fc.assert(
      fc.property(mmHg, mmHg, mmHg, mmHg, fc.double({ min: 1, max: 300, noNaN: true }), (map, a, b, target, max) => {
        const parts = barGeometry({
          ...bar(map, Math.min(a, b), Math.max(a, b), target),
          scaleMaxMmHg: max,
        });
        const mapPct = (Math.min(Math.max(map, 0), max) / max) * 100;
        const end = (part: { startPct: number; lengthPct: number }) => part.startPct + part.lengthPct;
        expect(parts.icp.startPct).toBe(0);
        expect(parts.icpRange.startPct).toBeCloseTo(end(parts.icp));
        expect(parts.remainder.startPct).toBeCloseTo(end(parts.icpRange));
        expect(end(parts.remainder)).toBeCloseTo(mapPct);
        expect(end(parts.missing)).toBeCloseTo(Math.max(mapPct, parts.targetPct));
        for (const part of [parts.icp, parts.icpRange, parts.remainder, parts.missing])
          expect(part.lengthPct).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});
