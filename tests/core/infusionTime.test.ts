import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mlPerH } from "../../src/core/infusionRate.ts";
import { infusedVolume, rateOver, timeToEmpty } from "../../src/core/infusionTime.ts";
import { minutes, ml } from "../../src/core/quantities.ts";
import { checkRows } from "../tables/checkRows.ts";
import { EMPTY_ROWS, RATE_OVER_ROWS } from "../tables/infusions.ts";
import { anyMl } from "./doseArbitraries.ts";
import { taken } from "./taken.ts";

const vol = (n: number) => taken(ml(n));
const min = (n: number) => taken(minutes(n));
const rate = (n: number) => taken(mlPerH(n));

checkRows("rate for a volume in a time", RATE_OVER_ROWS, (row) => taken(rateOver(vol(row.volumeMl), min(row.minutes))));
checkRows("minutes to empty", EMPTY_ROWS, (row) => timeToEmpty(vol(row.remainingMl), rate(row.mlPerH)));

describe("a volume in a time", () => {
  it("in no time is refused, nothing in no time too", () => {
    const refused = { ok: false, error: { kind: "no-time" } };
    expect(rateOver(vol(100), min(0))).toEqual(refused);
    expect(rateOver(vol(0), min(0))).toEqual(refused);
  });
  it("faster than any pump is refused", () => {
    expect(rateOver(vol(1000), min(1))).toMatchObject({ error: { kind: "out-of-range", max: 20_000 } });
  });
});

describe("volume infused", () => {
  it("adds what ran at each rate", () => {
    const segments = [
      { mlPerH: rate(30), minutes: min(20) },
      { mlPerH: rate(60), minutes: min(5) },
    ];
    expect(infusedVolume(segments)).toBe(15);
  });
  it("of none is nothing", () => expect(infusedVolume([])).toBe(0));
});

const anyMinutes = fc.double({ min: 0, max: 1440, noNaN: true }).map(min);
const anyRate = fc.double({ min: 0.0001, max: 20_000, noNaN: true }).map(rate);

describe("properties", () => {
  it("a rate for a volume in a time empties it in that time", () => {
    fc.assert(
      fc.property(anyMl, anyMinutes, (volumeMl, within) => {
        const over = rateOver(volumeMl, within);
        if (!over.ok) return;
        expect(Math.abs(timeToEmpty(volumeMl, over.value) / within - 1)).toBeLessThan(1e-12);
        expect(infusedVolume([{ mlPerH: over.value, minutes: within }])).toBeCloseTo(volumeMl, 6);
      }),
    );
  });
  it("splitting a stretch of time changes nothing", () => {
    fc.assert(
      fc.property(anyRate, anyMinutes, fc.double({ min: 0, max: 1, noNaN: true }), (at, whole, part) => {
        const first = min(whole * part);
        const rest = min(whole - first);
        const split = infusedVolume([
          { mlPerH: at, minutes: first },
          { mlPerH: at, minutes: rest },
        ]);
        const once = infusedVolume([{ mlPerH: at, minutes: whole }]);
        expect(Math.abs(split - once)).toBeLessThanOrEqual(1e-9 * once);
      }),
    );
  });
  it("is finite and never negative", () => {
    fc.assert(
      fc.property(anyMl, anyRate, (volumeMl, at) => {
        const left = timeToEmpty(volumeMl, at);
        expect(Number.isFinite(left) && left >= 0).toBe(true);
      }),
    );
  });
});
