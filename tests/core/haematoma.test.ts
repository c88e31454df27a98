import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clotCm, haematomaVolume } from "../../src/core/haematoma.ts";
import type { Cm } from "../../src/core/quantity.ts";
import { checkRows } from "../tables/checkRows.ts";
import { HAEMATOMA_ROWS } from "../tables/neuro.ts";

const cm = (n: number): Cm => n as Cm;

checkRows("haematoma volume", HAEMATOMA_ROWS, ({ a, b, c }) => haematomaVolume(cm(a), cm(b), cm(c)));

describe("the door", () => {
  it.each([0.1, 5, 20])("passes %d cm", (n) => expect(clotCm(n)).toEqual({ ok: true, value: n }));
  it.each([0.09, 20.1, 50])("refuses %d cm, as if said in millimetres", (n) => {
    expect(clotCm(n)).toEqual({ ok: false, error: { kind: "out-of-range", min: 0.1, max: 20 } });
  });
});

describe("properties", () => {
  const span = fc.double({ min: 0.1, max: 20, noNaN: true }).map(cm);
  it("is above nothing, does not depend on the order, and doubles with a span", () => {
    fc.assert(
      fc.property(span, span, span, (a, b, c) => {
        const volume = haematomaVolume(a, b, c);
        expect(volume).toBeGreaterThan(0);
        expect(haematomaVolume(c, a, b)).toBeCloseTo(volume, 9);
        expect(haematomaVolume(cm(2 * a), b, c)).toBe(2 * volume);
      }),
    );
  });
});
