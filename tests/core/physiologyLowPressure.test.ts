import { describe, expect, it } from "vitest";
import { lowPressureDose } from "../../src/core/lowPressureDose.ts";
import { cerebralPerfusionPressure } from "../../src/core/pressure.ts";
import { mmHgOf, MIN_MS } from "./courseValues.ts";
import { taken } from "./taken.ts";
import { exactLowPressure, type ExactReading } from "./exactLowPressure.ts";
import { hasPhysiology, isMeasured, physiologyTitle, readPhysiology } from "./physiologyFiles.ts";

const LIMIT_MS = 10 * MIN_MS;
/** Invented: no table holds an intracranial pressure. It only has to bring perfusion across the floor often. */
const INVENTED_ICP_MMHG = 22;

/** Means of one column in the order of the table; minutes without one are left out, and so become gaps. */
const meansOf = (file: string, column: string): readonly ExactReading[] =>
  readPhysiology(file).flatMap((row) => {
    const cell = row[column];
    return isMeasured(cell) ? [{ atMs: Number(row["minute"]) * MIN_MS, mmHg: cell }] : [];
  });

const waveOf = (file: string, timeColumn: string, column: string): readonly ExactReading[] =>
  readPhysiology(file).map((row) => ({ atMs: Math.round(Number(row[timeColumn]) * 1_000), mmHg: row[column]! }));

const doseOf = (means: readonly ExactReading[], floorMmHg: number, icpMmHg: number, limitMs = LIMIT_MS) => {
  const series = means.map(({ atMs, mmHg }) => ({
    atMs,
    mmHg: cerebralPerfusionPressure(mmHgOf(Number(mmHg)), mmHgOf(icpMmHg)),
  }));
  return taken(lowPressureDose(series, mmHgOf(floorMmHg), limitMs));
};

/** Another way to the same: the line between readings is looked up in the middle of every second. */
function bySeconds(means: readonly ExactReading[], floorMmHg: number) {
  let dose = 0;
  let below = 0;
  let bound = 0;
  let crossings = 0;
  for (const [i, to] of means.slice(1).entries()) {
    const from = means[i]!;
    const lengthMs = to.atMs - from.atMs;
    if (lengthMs > LIMIT_MS) continue;
    const rise = Number(to.mmHg) - Number(from.mmHg);
    for (let ms = 500; ms < lengthMs; ms += 1_000) {
      const depth = floorMmHg - (Number(from.mmHg) + (rise * ms) / lengthMs);
      dose += Math.max(0, depth) / 60;
      below += depth > 0 ? 1 / 60 : 0;
    }
    if (Number(from.mmHg) < floorMmHg !== Number(to.mmHg) < floorMmHg) crossings += 1;
    // The second that holds a crossing is wrong by an eighth of its length times the rise in it, at most.
    bound += Math.abs(rise) / (lengthMs / 1_000) / 60 / 8;
  }
  return { dose, below, bound, crossings };
}

type Series = readonly [name: string, floorMmHg: number, means: () => readonly ExactReading[]];
const CUFF: readonly Series[] = [
  ["cuff means of the first patient, every 10 minutes or so", 65, () => meansOf("icu_minute_vitals_a.csv", "nibp_mean")],
  ["cuff means of the second patient, up and down", 60, () => meansOf("icu_minute_vitals_b.csv", "NBPMean")],
  ["arterial means of the first patient, with a minute missing", 65, () => meansOf("icu_minute_vitals_a.csv", "map_mmHg")],
]; // prettier-ignore
const WAVES: readonly Series[] = [
  ["a wave at 10 Hz", 60, () => waveOf("clintools_tfa_sample_data.csv", "t", "abp")],
  ["another", 70, () => waveOf("clintools_tfa_sample_data_1.csv", "t", "abp")],
  ["a wave at 10 Hz with uneven times", 60, () => waveOf("clintools_data10.csv", "t", "abp")],
  ["an oddly low wave at 125 Hz", 30, () => waveOf("abp_125hz_mimic037.csv", "seconds", "abp_mmHg").slice(0, 15_000)],
  [
    "a wave with a flush and a dropout under zero",
    60,
    () => waveOf("abp_125hz_0013.csv", "seconds_from_record_start", "abp_mmHg"),
  ],
];

describe.skipIf(!hasPhysiology)(physiologyTitle("dose of low pressure on real pressures"), () => {
  it.each([...CUFF, ...WAVES])("%s: whole fractions agree", (_name, floorMmHg, read) => {
    const means = read();
    expect(means.length).toBeGreaterThan(5);
    // Perfusion is under its floor exactly where the mean is under the floor plus the constant ICP.
    const exact = exactLowPressure(means, floorMmHg + INVENTED_ICP_MMHG, LIMIT_MS);
    const { doseMmHgMin, belowMin, knownMin, unknownMin } = doseOf(means, floorMmHg, INVENTED_ICP_MMHG);
    expect(exact.doseMmHgMin).toBeGreaterThan(0);
    expect(belowMin).toBeLessThan(knownMin);
    expect(Math.abs(doseMmHgMin - exact.doseMmHgMin)).toBeLessThanOrEqual(1e-9 * exact.doseMmHgMin);
    expect(Math.abs(belowMin - exact.belowMin)).toBeLessThanOrEqual(1e-9 * exact.belowMin);
    expect(knownMin).toBe(exact.knownMin);
    expect(unknownMin).toBe(exact.unknownMin);
  });

  it.each(CUFF)("%s: looking every second agrees", (_name, floorMmHg, read) => {
    const means = read();
    const seconds = bySeconds(means, floorMmHg + INVENTED_ICP_MMHG);
    const { doseMmHgMin, belowMin } = doseOf(means, floorMmHg, INVENTED_ICP_MMHG);
    expect(Math.abs(doseMmHgMin - seconds.dose)).toBeLessThanOrEqual(seconds.bound + 1e-9);
    // The second that holds a crossing is counted whole or not at all: wrong by half of it at most.
    expect(Math.abs(belowMin - seconds.below)).toBeLessThanOrEqual((seconds.crossings * 0.5) / 60 + 1e-9);
    expect(seconds.crossings).toBeGreaterThan(0);
  });

  it("minutes that were not measured are gaps, not zeros", () => {
    const means = meansOf("icu_minute_vitals_a.csv", "nibp_mean");
    expect(means).toHaveLength(152);
    const gaps = means.slice(1).map(({ atMs }, i) => atMs - means[i]!.atMs);
    const sums = doseOf(means, 65, INVENTED_ICP_MMHG);
    expect(sums.unknownMin).toBe(gaps.filter((ms) => ms > LIMIT_MS).reduce((sum, ms) => sum + ms, 0) / MIN_MS);
    expect(sums.lowest?.mmHg).toBe(74 - INVENTED_ICP_MMHG);
    // Most gaps are exactly the limit: a millisecond less, and they are unknown.
    expect(gaps.filter((ms) => ms === LIMIT_MS)).toHaveLength(84);
    const stricter = doseOf(means, 65, INVENTED_ICP_MMHG, LIMIT_MS - 1);
    expect(stricter.unknownMin - sums.unknownMin).toBe(840);
  });
});
