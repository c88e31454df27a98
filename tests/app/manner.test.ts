import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mannerOf } from "../../src/app/manner.ts";

describe("mannerOf", () => {
  // Figures are this project's choice; the table says what they come to.
  it.each([
    ["a quiet room", undefined, 0, 0, false, 1, 0],
    ["before anything was measured, asked for softer", undefined, 0, -1, false, 1, -4],
    ["a room quieter than quiet", -90, 0, 0, false, 1, 0],
    ["the limit of quiet", -60, 0, 0, false, 1, 0],
    ["ten decibels of noise over it", -50, 0, 0, false, 1, 7],
    ["twenty", -40, 0, 0, false, 1, 14],
    ["an engine at the ear: no more than before", -10, 0, 0, false, 1, 14],
    ["two steps louder", -60, 0, 2, false, 1, 8],
    ["two steps softer", -60, 0, -2, false, 1, -8],
    ["not acknowledged", -60, 0, 0, true, 1, 6],
    ["all at once", -40, 0, 2, true, 1, 28],
    ["two steps slower", -60, -2, 0, false, 0.8, 0],
    ["one step slower", -60, -1, 0, false, 0.9, 0],
    ["one step faster", -60, 1, 0, false, 1.1, 0],
    ["two steps faster", -60, 2, 0, false, 1.2, 0],
  ])("%s", (_name, noiseDb, pace, volume, louder, expectedPace, expectedDb) => {
    const manner = mannerOf({ noiseDb, pace, volume, louder });
    expect(manner.pace).toBe(expectedPace);
    expect(manner.gainDb).toBeCloseTo(expectedDb, 9);
  });

  it("never gets softer as the room gets louder, nor rises faster than the room", () => {
    const db = fc.double({ min: -120, max: 0, noNaN: true });
    const steps = fc.integer({ min: -2, max: 2 });
    fc.assert(
      fc.property(db, db, steps, steps, fc.boolean(), (a, b, pace, volume, louder) => {
        const [quiet, loud] = [Math.min(a, b), Math.max(a, b)].map(
          (noiseDb) => mannerOf({ noiseDb, pace, volume, louder }).gainDb,
        ) as [number, number];
        expect(loud - quiet).toBeGreaterThanOrEqual(0);
        expect(loud - quiet).toBeLessThanOrEqual(Math.abs(a - b) + 1e-9);
      }),
    );
  });

  it("gets louder with each step asked for, and with an alert that nobody has acknowledged", () => {
    const room = fc.option(fc.double({ min: -120, max: 0, noNaN: true }), { nil: undefined });
    fc.assert(
      fc.property(room, fc.integer({ min: -2, max: 1 }), (noiseDb, volume) => {
        const gain = (v: number, louder: boolean) => mannerOf({ noiseDb, pace: 0, volume: v, louder }).gainDb;
        expect(gain(volume + 1, false)).toBeGreaterThan(gain(volume, false));
        expect(gain(volume, true)).toBeGreaterThan(gain(volume, false));
      }),
    );
  });
});
