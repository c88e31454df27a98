import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { EyeScore, GcsParts, MotorScore, VerbalScore } from "../../src/core/gcs.ts";
import { ichScore, type Haemorrhage } from "../../src/core/ichScore.ts";
import type { Ml, Years } from "../../src/core/quantity.ts";
import { checkRows } from "../tables/checkRows.ts";
import { ICH_ROWS } from "../tables/neuro.ts";

/** Some examination with this total. */
function withTotal(total: number): GcsParts {
  const motor = Math.min(6, total - 2);
  const verbal = Math.min(5, total - motor - 1);
  return { eye: (total - motor - verbal) as EyeScore, verbal: verbal as VerbalScore, motor: motor as MotorScore };
}
const bleed = (gcs: GcsParts, ml: number, years: number, ventricles = false, infratentorial = false): Haemorrhage => ({
  gcs,
  volumeMl: ml as Ml,
  ageA: years as Years,
  intraventricular: ventricles,
  infratentorial,
});
const scored = (haemorrhage: Haemorrhage) => {
  const score = ichScore(haemorrhage);
  if (!score.ok) throw new Error(`refused: ${JSON.stringify(score.error)}`);
  return score.value;
};

checkRows(
  "ICH score",
  ICH_ROWS,
  (row) => scored(bleed(withTotal(row.gcs), row.ml, row.years, row.ventricles, row.infratentorial)).total,
);

describe("its parts", () => {
  it("are told apart", () => {
    expect(scored(bleed(withTotal(6), 45, 72, true))).toEqual({
      total: 3,
      points: { gcs: 1, volume: 1, intraventricular: 1, infratentorial: 0, age: 0 },
    });
    expect(scored(bleed(withTotal(3), 10, 80, false, true))).toEqual({
      total: 4,
      points: { gcs: 2, volume: 0, intraventricular: 0, infratentorial: 1, age: 1 },
    });
  });
  it("79 years and 11 months are not 80", () => {
    expect(scored(bleed(withTotal(15), 0, 79 + 11 / 12)).points.age).toBe(0);
  });
});

describe("without a total of the coma scale", () => {
  it("it is refused, with the part that stands in the way", () => {
    expect(ichScore(bleed({ eye: 1, verbal: "not-testable", motor: 4 }, 45, 72))).toEqual({
      ok: false,
      error: { kind: "no-total", notTestable: ["verbal"], missing: [] },
    });
    expect(ichScore(bleed({ eye: 1, verbal: 1 }, 45, 72))).toEqual({
      ok: false,
      error: { kind: "no-total", notTestable: [], missing: ["motor"] },
    });
  });
});

describe("properties", () => {
  it("is 0 to 6, the sum of its parts, and never less for a lower coma scale", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 14 }),
        fc.double({ min: 0, max: 4000, noNaN: true }),
        fc.double({ min: 0, max: 110, noNaN: true }),
        fc.boolean(),
        fc.boolean(),
        (gcs, ml, years, ventricles, infratentorial) => {
          const { total, points } = scored(bleed(withTotal(gcs), ml, years, ventricles, infratentorial));
          expect(total).toBe(Object.values(points).reduce<number>((a, b) => a + b, 0));
          expect(total >= 0 && total <= 6).toBe(true);
          const better = scored(bleed(withTotal(gcs + 1), ml, years, ventricles, infratentorial));
          expect(better.total).toBeLessThanOrEqual(total);
        },
      ),
    );
  });
});
