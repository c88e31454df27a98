import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { kg, ml, mlPerKg, perMin } from "../../src/core/quantities.ts";
import {
  alveolarVentilation,
  deadSpace,
  minuteVolume,
  tidalVolume,
  tidalVolumeRange,
} from "../../src/core/ventilation.ts";
import { checkRows } from "../tables/checkRows.ts";
import { ALVEOLAR_VENTILATION_ROWS, DEAD_SPACE_ROWS, MINUTE_ROWS, TIDAL_ROWS } from "../tables/ventilation.ts";
import { taken } from "./taken.ts";

const alveolar = (rate: number, tidal: number, dead: number): number =>
  alveolarVentilation(taken(perMin(rate)), taken(ml(tidal)), taken(ml(dead)));
const minute = (rate: number, tidal: number): number => minuteVolume(taken(perMin(rate)), taken(ml(tidal)));

checkRows("tidal volume", TIDAL_ROWS, (row) => tidalVolume(taken(mlPerKg(row.perKg)), taken(kg(row.kg))));
checkRows("dead space", DEAD_SPACE_ROWS, (row) => deadSpace(taken(mlPerKg(row.perKg)), taken(kg(row.kg))));
checkRows("minute volume", MINUTE_ROWS, ({ rate, tidal }) => minute(rate, tidal));
checkRows("alveolar ventilation", ALVEOLAR_VENTILATION_ROWS, ({ rate, tidal, dead }) => alveolar(rate, tidal, dead));

it("the range of 6 to 8 mL/kg at 73.296 kg is 440 to 586 mL", () => {
  const range = tidalVolumeRange({ low: taken(mlPerKg(6)), high: taken(mlPerKg(8)) }, taken(kg(73.296)));
  expect([Math.round(range.lowMl), Math.round(range.highMl)]).toEqual([440, 586]);
});
it("a breath no larger than its dead space reaches nothing", () => {
  expect(alveolar(14, 161, 161)).toBe(0);
  expect(alveolar(14, 100, 161)).toBe(0);
  expect(alveolar(10, 162, 161)).toBeCloseTo(0.01, 12);
});

describe("properties", () => {
  const rates = fc.double({ min: 2, max: 80, noNaN: true });
  const volume = fc.double({ min: 0, max: 20_000, noNaN: true });

  it("what reaches alveoli and what the dead space takes make up the minute volume", () => {
    fc.assert(
      fc.property(rates, volume, volume, (rate, a, b) => {
        const [dead, tidal] = [Math.min(a, b), Math.max(a, b)];
        expect(alveolar(rate, tidal, dead) + minute(rate, dead)).toBeCloseTo(minute(rate, tidal), 6);
      }),
    );
  });
  it("it is never negative and never more than the minute volume", () => {
    fc.assert(
      fc.property(rates, volume, volume, (rate, tidal, dead) => {
        expect(alveolar(rate, tidal, dead)).toBeGreaterThanOrEqual(0);
        expect(alveolar(rate, tidal, dead)).toBeLessThanOrEqual(minute(rate, tidal));
      }),
    );
  });
});
