import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  hydrostaticMmHg,
  mapAtBrainLevelMmHg,
  tiltDeg,
  torsoCm,
  verticalCm,
  verticalHeightCm,
} from "../../src/core/hydrostatic.ts";
import { checkedMmHg as mm } from "../../src/core/mmHg.ts";
import { cerebralPerfusionPressure } from "../../src/core/pressure.ts";
import { checkRows } from "../tables/checkRows.ts";
import { BRAIN_LEVEL_ROWS, COLUMN_ROWS, CPP_AT_BRAIN_ROWS, HEIGHT_ROWS } from "../tables/hydrostatic.ts";
import { taken } from "./taken.ts";

const cm = (n: number) => taken(verticalCm(n));

checkRows("column of blood", COLUMN_ROWS, ({ heightCm }) => hydrostaticMmHg(cm(heightCm)));
checkRows("height of the tragus", HEIGHT_ROWS, (row) =>
  verticalHeightCm(taken(torsoCm(row.torsoCm)), taken(tiltDeg(row.tiltDeg))),
);
checkRows("mean at the brain", BRAIN_LEVEL_ROWS, ({ map, heightCm }) => mapAtBrainLevelMmHg(mm(map), cm(heightCm)));
checkRows("perfusion at the brain", CPP_AT_BRAIN_ROWS, ({ map, icp, heightCm }) =>
  cerebralPerfusionPressure(mapAtBrainLevelMmHg(mm(map), cm(heightCm)), mm(icp)),
);

it("head up by 30 degrees, step by step: 15 cm, 11.7 mmHg, MAP 80 is about 68.3 at the brain", () => {
  const height = verticalHeightCm(taken(torsoCm(30)), taken(tiltDeg(30)));
  expect(mapAtBrainLevelMmHg(mm(80), height)).toBeCloseTo(68.3, 1);
});

const height = fc.double({ min: -100, max: 100, noNaN: true }).map(cm);
const map = fc.double({ min: 0, max: 250, noNaN: true }).map(mm);

describe("properties", () => {
  it("a column twice as high weighs twice as much; one below weighs the same the other way", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 50, noNaN: true }), (h) => {
        const once = hydrostaticMmHg(cm(h));
        expect(hydrostaticMmHg(cm(2 * h))).toBeCloseTo(2 * once, 9);
        expect(hydrostaticMmHg(cm(-h)) + once).toBe(0);
      }),
    );
  });
  it("the height is never longer than the body, and grows with the tilt", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100 }), fc.integer({ min: -45, max: 89 }), (torso, tilt) => {
        const length = taken(torsoCm(torso));
        const now = verticalHeightCm(length, taken(tiltDeg(tilt)));
        expect(Math.abs(now)).toBeLessThanOrEqual(torso);
        expect(verticalHeightCm(length, taken(tiltDeg(tilt + 1)))).toBeGreaterThan(now);
      }),
    );
  });
  it("the mean at the brain is a number, not under 0, and falls as the head rises", () => {
    fc.assert(
      fc.property(map, height, height, (mean, one, other) => {
        const [low, high] = one < other ? [one, other] : [other, one];
        const lower = mapAtBrainLevelMmHg(mean, high);
        expect(lower).toBeGreaterThanOrEqual(0);
        expect(lower).toBeLessThanOrEqual(mapAtBrainLevelMmHg(mean, low));
      }),
    );
  });
});
