import fc from "fast-check";
import { describe, expect, it } from "vitest";
import "../../propertySeed.ts";
import { selectLows } from "../../../src/export/handover/lows.ts";
import { selectTargets } from "../../../src/log/targets.ts";
import { hasPhysiology, isMeasured, physiologyTitle, readPhysiology } from "../../core/physiologyFiles.ts";
import { CaseBuilder } from "../../log/caseBuilder.ts";
import { defaultProtocol } from "../../../src/protocol/defaultProtocol.ts";

/**
 * No published table of readings with their minutes under a floor was found. The judge is a sampler of its own that looks at
 * the straight line between two readings once in each second; that the area is closed at the first and the last reading is
 * as in Spaite 2017, doi:10.1016/j.annemergmed.2017.03.027, figure 2. Pressures are real where the table is at hand.
 */
type Reading = { readonly atS: number; readonly sbp?: number; readonly dbp?: number; readonly icp?: number };
type Point = readonly [atS: number, mmHg: number];

const GAP_S = defaultProtocol.lowPressure.unknownAfterS.value;

function sampledMin(points: readonly Point[], floor: number): number {
  let seconds = 0;
  points.slice(1).forEach(([toS, to], i) => {
    const [fromS, from] = points[i] ?? [0, 0];
    if (toS - fromS > GAP_S) return;
    for (let s = fromS; s < toS; s++) if (from + ((to - from) * (s + 0.5 - fromS)) / (toS - fromS) < floor) seconds++;
  });
  return seconds / 60;
}

const mapOf = ({ sbp = 0, dbp = 0 }: Reading): number => dbp + (sbp - dbp) / 3;

/** A new CPP whenever a mean or an ICP comes, with the newest of the other. */
function cppPoints(readings: readonly Reading[]): readonly Point[] {
  let [map, icp]: (number | undefined)[] = [undefined, undefined];
  return readings.flatMap((reading): readonly Point[] => {
    if (reading.sbp !== undefined) map = mapOf(reading);
    if (reading.icp !== undefined) icp = reading.icp;
    return map === undefined || icp === undefined ? [] : [[reading.atS, map - icp]];
  });
}

/** @param afterS since the last reading. */
function expectLows(readings: readonly Reading[], afterS: number): void {
  const built = new CaseBuilder();
  for (const { atS, ...values } of readings) built.at(atS).say(values);
  const lastS = readings.at(-1)?.atS ?? 0;
  const lows = selectLows(built.state, defaultProtocol, (lastS + afterS) * 1000);
  const targets = selectTargets(built.state, defaultProtocol);
  const pressures = readings.filter(({ sbp }) => sbp !== undefined);
  const expected = [
    ["map", pressures.map((r): Point => [r.atS, mapOf(r)]), targets.mapMmHg.target.value],
    ["sbp", pressures.map((r): Point => [r.atS, r.sbp ?? 0]), targets.sbpMmHg.target.value],
    ["cpp", cppPoints(readings), targets.cppMmHg.target.value],
  ] as const;
  for (const [code, points, floor] of expected) {
    const low = lows.find((one) => one.code === code);
    expect(low === undefined, code).toBe(points.length === 0);
    if (low === undefined) continue;
    const lowest = Math.min(...points.map(([, mmHg]) => mmHg));
    expect(low.lowestMmHg).toBeCloseTo(lowest, 9);
    expect(low.atMs).toBe(1000 * (points.find(([, mmHg]) => Math.abs(mmHg - lowest) < 1e-9)?.[0] ?? -1));
    expect(low.targetMmHg).toBe(floor);
    expect(low.anyUnder).toBe(lowest < floor);
    // At each of at most so many crossings the sampler is off by up to half a second.
    expect(Math.abs(low.underMin - sampledMin(points, floor))).toBeLessThanOrEqual((0.5 * points.length + 1e-6) / 60);
    const hasGap = points.slice(1).some(([atS], i) => atS - (points[i]?.[0] ?? 0) > GAP_S);
    const [endS = 0, end = 0] = points.at(-1) ?? [];
    const sinceS = lastS + afterS - endS;
    expect(low.isLeast).toBe(hasGap || sinceS > GAP_S || (end < floor && sinceS >= 60));
  }
}

describe("lowest pressures and their minutes under target, against a look in each second", () => {
  const values = fc.oneof(
    fc
      .record({ sbp: fc.integer({ min: 50, max: 180 }), share: fc.integer({ min: 40, max: 80 }) })
      .map(({ sbp, share }) => ({
        sbp,
        dbp: Math.round((sbp * share) / 100),
      })),
    fc.record({ icp: fc.integer({ min: 0, max: 50 }) }),
  );
  const course = fc
    .array(fc.tuple(fc.integer({ min: 1, max: 900 }), values), { minLength: 1, maxLength: 25 })
    .map((steps) => {
      let atS = 0;
      return steps.map(([afterS, value]): Reading => ({ atS: (atS += afterS), ...value }));
    });

  it("holds for any course of pressures and ICP", () => {
    fc.assert(fc.property(course, fc.integer({ min: 0, max: 900 }), expectLows), { numRuns: 300 });
  });

  it("holds where a reading is just as far from the last as may be, and a second further", () => {
    const low = { sbp: 80, dbp: 50 };
    for (const gapS of [GAP_S, GAP_S + 1])
      expectLows(
        [
          { atS: 0, ...low },
          { atS: gapS, ...low },
        ],
        0,
      );
  });

  it.skipIf(!hasPhysiology)(physiologyTitle("holds on real pressures, minute by minute, with gaps"), () => {
    for (const [file, sbpIs, dbpIs] of [
      ["icu_minute_vitals_a.csv", "sbp_mmHg", "dbp_mmHg"],
      ["icu_minute_vitals_b.csv", "NBPSys", "NBPDias"],
    ] as const) {
      const readings = readPhysiology(file).flatMap((row): readonly Reading[] => {
        const [sbp, dbp] = [row[sbpIs], row[dbpIs]].map((cell) => (isMeasured(cell) ? Number(cell) : 0));
        const isPair = sbp !== undefined && dbp !== undefined && dbp > 0 && sbp > dbp;
        return isPair ? [{ atS: 60 * Number(row["minute"]), sbp, dbp }] : [];
      });
      expect(readings.length).toBeGreaterThan(5);
      expectLows(readings, 0);
    }
  });
});

describe("a value that was put right later", () => {
  it("counts at the time at which it was taken, and the struck one nowhere", () => {
    const built = new CaseBuilder();
    built.at(0).say({ map: 95 });
    const [id = ""] = built.at(60).say({ map: 40 });
    built.at(120).say({ map: 95 });
    const before = selectLows(built.state, defaultProtocol, 120_000)[0];
    expect(before).toMatchObject({ lowestMmHg: 40, atMs: 60_000 });
    built.at(180).add({ type: "entry.struck", targetIds: [id], reason: "corrected" });
    expect(selectLows(built.state, defaultProtocol, 180_000)[0]).toMatchObject({
      lowestMmHg: 95,
      anyUnder: false,
      underMin: 0,
    });
  });
});
