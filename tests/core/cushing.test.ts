import { describe, expect, it } from "vitest";
import { cushingPattern, type CushingLimits, type PressureAndRate } from "../../src/core/cushing.ts";
import { mmHgOf, pctOf, perMinOf } from "./courseValues.ts";

const LIMITS: CushingLimits = { sbpRisePct: pctOf(20), hrFallPct: pctOf(20), hrBelowPerMin: perMinOf(60) };
type Said = readonly [sbp: number, dbp: number, hr: number];
const said = ([sbp, dbp, hr]: Said): PressureAndRate => ({
  sbpMmHg: mmHgOf(sbp),
  dbpMmHg: mmHgOf(dbp),
  hrPerMin: perMinOf(hr),
});

/** The first two rows are worked by hand: +46 %, 50 → 100, −42 %; +15 %, 50 → 65, −2 %. */
const ROWS: readonly [name: string, first: Said, now: Said, parts: readonly boolean[], fires: boolean][] = [
  ["the whole pattern", [130, 80, 90], [190, 90, 52], [true, true, true, true], true],
  ["a little higher, as fast", [130, 80, 90], [150, 85, 88], [false, true, false, false], false],
  ["systolic up by exactly the limit", [100, 60, 90], [120, 70, 52], [true, true, true, true], true],
  ["systolic up by just less", [100, 60, 90], [119, 60, 52], [false, true, true, true], false],
  ["pulse pressure as wide as before", [100, 60, 90], [140, 100, 52], [true, false, true, true], false],
  ["pulse pressure wider by one", [100, 60, 90], [140, 99, 52], [true, true, true, true], true],
  ["slow, though not slower by the limit", [100, 60, 62], [140, 70, 59], [true, true, true, false], true],
  ["at the limit of slow", [100, 60, 62], [140, 70, 60], [true, true, false, false], false],
  ["slower by exactly the limit, not slow", [100, 60, 100], [140, 70, 80], [true, true, false, true], true],
  ["slower by just less", [100, 60, 100], [140, 70, 81], [true, true, false, false], false],
  ["a fast heart that got faster", [100, 60, 100], [140, 70, 125], [true, true, false, false], false],
  ["a falling systolic", [150, 60, 90], [120, 20, 52], [false, true, true, true], false],
];

describe.each([true, false])("neurological examination worse: %s", (neuroWorse) => {
  it.each(ROWS)("%s", (_name, first, now, [sbpRose, pulsePressureWidened, hrLow, hrFell], fires) => {
    expect(cushingPattern(said(first), said(now), LIMITS, neuroWorse)).toEqual({
      sbpRose,
      pulsePressureWidened,
      hrLow,
      hrFell,
      neuroWorse,
      fires,
      asks: fires && neuroWorse,
    });
  });
});

it("follows the limits that it is given", () => {
  const first = said([130, 80, 90]);
  const now = said([150, 85, 88]);
  const lax = { sbpRisePct: pctOf(15), hrFallPct: pctOf(2), hrBelowPerMin: perMinOf(60) };
  expect(cushingPattern(first, now, lax, false).fires).toBe(true);
  expect(cushingPattern(first, now, { ...lax, sbpRisePct: pctOf(16) }, false).fires).toBe(false);
  expect(cushingPattern(first, now, { ...lax, hrFallPct: pctOf(3) }, false).fires).toBe(false);
  expect(cushingPattern(first, now, { ...lax, hrFallPct: pctOf(3), hrBelowPerMin: perMinOf(89) }, false).fires).toBe(
    true,
  );
});
