import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { co2Gap, paco2, paco2FromEtco2 } from "../../src/core/carbonDioxide.ts";
import { toCanonical } from "../../src/core/convert.ts";
import { checkedMmHg, mmHg } from "../../src/core/mmHg.ts";
import { checkRows } from "../tables/checkRows.ts";
import { GAP_ROWS } from "../tables/ventilation.ts";
import { taken } from "./taken.ts";

const gap = (arterial: number, endTidal: number) => co2Gap(taken(paco2(arterial)), taken(mmHg(endTidal)));
const outside = { ok: false, error: { kind: "out-of-range", min: 5, max: 200 } };

// Both pressures are said in kPa: 4 at the end of a breath, and the gap more in the artery.
checkRows("gap, mmHg, of one published in kPa", GAP_ROWS, (gapKPa) => {
  const endTidal = taken(toCanonical("etco2", 4, "kPa"));
  const arterial = taken(toCanonical("etco2", 4 + gapKPa, "kPa"));
  return gap(arterial, endTidal).gapMmHg;
});

describe("the door to an arterial CO2", () => {
  it.each([5, 200])("takes %d", (n) => expect(paco2(n)).toEqual({ ok: true, value: n }));
  it.each([4.99, 200.01, -1])("refuses %d", (n) => expect(paco2(n)).toEqual(outside));
  it.each([NaN, Infinity])("refuses %d", (n) => {
    expect(paco2(n)).toEqual({ ok: false, error: { kind: "not-a-number" } });
  });
});

describe("the gap", () => {
  it("is what the artery has more", () => expect(gap(50, 38)).toEqual({ gapMmHg: 12, reversed: false }));
  it("may be nothing", () => expect(gap(38, 38)).toEqual({ gapMmHg: 0, reversed: false }));
  it("may be reversed, and says so", () => expect(gap(36, 38)).toEqual({ gapMmHg: -2, reversed: true }));
});

describe("arterial CO2 from an end-tidal one", () => {
  const from = (endTidal: number, gapMmHg: number) =>
    paco2FromEtco2(checkedMmHg(endTidal), { gapMmHg: checkedMmHg(gapMmHg), reversed: gapMmHg < 0 });

  it("is always estimated", () => {
    expect(from(35, 12)).toEqual({ ok: true, value: { kind: "estimated", paco2MmHg: 47 } });
    expect(from(35, -2)).toEqual({ ok: true, value: { kind: "estimated", paco2MmHg: 33 } });
  });
  it("is refused where no artery can have it", () => {
    expect(from(7, -2)).toMatchObject({ ok: true });
    expect(from(6.9, -2)).toEqual(outside);
    expect(from(120, 80)).toMatchObject({ ok: true });
    expect(from(120, 80.1)).toEqual(outside);
  });
});

describe("properties", () => {
  const arterial = fc.double({ min: 5, max: 200, noNaN: true });
  const endTidal = fc.double({ min: 0, max: 300, noNaN: true });

  it("at the reading of the gas, the estimate is the gas", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 6, max: 199, noNaN: true }),
        fc.double({ min: 5, max: 120, noNaN: true }),
        (gas, et) => {
          expect(taken(paco2FromEtco2(taken(mmHg(et)), gap(gas, et))).paco2MmHg).toBeCloseTo(gas, 9);
        },
      ),
    );
  });
  it("an estimate passes the same door as a gas, or is refused", () => {
    fc.assert(
      fc.property(arterial, endTidal, endTidal, (gas, then, now) => {
        const known = gap(gas, then);
        expect(known.reversed).toBe(then > gas);
        const result = paco2FromEtco2(taken(mmHg(now)), known);
        expect(result).toMatchObject(result.ok ? { value: { kind: "estimated" } } : outside);
        if (result.ok) expect(paco2(result.value.paco2MmHg).ok).toBe(true);
      }),
    );
  });
});
