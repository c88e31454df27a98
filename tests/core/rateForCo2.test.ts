import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { co2Gap, paco2, paco2FromEtco2, type ArterialCo2 } from "../../src/core/carbonDioxide.ts";
import { mmHg } from "../../src/core/mmHg.ts";
import { ml, perMin } from "../../src/core/quantities.ts";
import { rateForCo2, rateForCo2AtVolume } from "../../src/core/rateForCo2.ts";
import { alveolarVentilation } from "../../src/core/ventilation.ts";
import { checkRows } from "../tables/checkRows.ts";
import { RATE_AT_VOLUME_ROWS, RATE_ROWS } from "../tables/ventilation.ts";
import { taken } from "./taken.ts";

const measured = (n: number): ArterialCo2 => ({ kind: "measured", paco2MmHg: taken(paco2(n)) });
const plain = (rate: number, co2: number, target: number) =>
  rateForCo2(taken(perMin(rate)), measured(co2), taken(paco2(target)));

type Change = { rate: number; tidal: number; newTidal: number; dead: number; paco2: number; target: number };
const atVolume = (c: Change) =>
  rateForCo2AtVolume(
    { ratePerMin: taken(perMin(c.rate)), tidalMl: taken(ml(c.tidal)) },
    taken(ml(c.newTidal)),
    taken(ml(c.dead)),
    measured(c.paco2),
    taken(paco2(c.target)),
  );

checkRows("rate for a CO2 target", RATE_ROWS, (row) => plain(row.rate, row.paco2, row.target).perMin);
checkRows("the same with a new tidal volume", RATE_AT_VOLUME_ROWS, (row) => taken(atVolume(row)).perMin);

describe("whole breaths", () => {
  it("18.4 is set as 18", () => expect(plain(14, 50, 38).wholePerMin).toBe(18));
  it("a half goes upward", () => {
    expect(plain(14, 45, 36)).toMatchObject({ perMin: 17.5, wholePerMin: 18 });
    expect(plain(10, 36.2, 40)).toMatchObject({ perMin: 9.05, wholePerMin: 9 });
  });
  it("nothing hides that a target cannot be met", () => expect(plain(2, 5, 200).wholePerMin).toBe(0));
});

describe("an end-tidal value needs a gap", () => {
  const etco2 = taken(mmHg(38));
  const gap = co2Gap(taken(paco2(50)), etco2);

  it("a low end-tidal over a wide gap asks for a faster rate, not a slower one", () => {
    const now = taken(paco2FromEtco2(etco2, gap));
    const rate = rateForCo2(taken(perMin(14)), now, taken(paco2(38)));
    expect(rate).toMatchObject({ kind: "estimated", wholePerMin: 18 });
  });
  it("a gas gives a computed rate", () => expect(plain(14, 50, 38).kind).toBe("computed"));
  it("the new volume keeps how the CO2 is known", () => {
    const now = taken(paco2FromEtco2(etco2, gap));
    const breath = { ratePerMin: taken(perMin(14)), tidalMl: taken(ml(440)) };
    const rate = rateForCo2AtVolume(breath, taken(ml(440)), taken(ml(161)), now, taken(paco2(38)));
    expect(taken(rate)).toMatchObject({ kind: "estimated", wholePerMin: 18 });
  });
  it("does not compile without one", () => {
    // Never run: the compiler is the judge, and an unused expectation is an error too.
    const refused = () => {
      // @ts-expect-error an end-tidal CO2 is no arterial one
      rateForCo2(taken(perMin(14)), { kind: "measured", paco2MmHg: etco2 }, taken(paco2(38)));
      // @ts-expect-error nor is it one as a bare pressure
      rateForCo2(taken(perMin(14)), etco2, taken(paco2(38)));
      // @ts-expect-error an end-tidal target is no arterial target
      rateForCo2(taken(perMin(14)), measured(50), etco2);
      // @ts-expect-error a gap is worked out from a gas
      co2Gap(etco2, etco2);
    };
    expect(refused).toBeTypeOf("function");
  });
});

describe("a breath that does not pass its dead space", () => {
  const change = { rate: 14, tidal: 440, newTidal: 440, dead: 161, paco2: 50, target: 38 };
  const refused = (volume: string) => ({ ok: false, error: { kind: "no-alveolar-breath", volume } });

  it.each([161, 160, 0])("present %d mL", (tidal) => {
    expect(atVolume({ ...change, tidal })).toEqual(refused("present"));
  });
  it.each([161, 160, 0])("new %d mL", (newTidal) => expect(atVolume({ ...change, newTidal })).toEqual(refused("new")));
  it("so little more that no finite rate would do", () => {
    expect(atVolume({ ...change, dead: 0, newTidal: 5e-324 })).toEqual(refused("new"));
  });
  it("the least more is an answer, for the caller to hold against its limits", () => {
    expect(taken(atVolume({ ...change, newTidal: 161.1 })).perMin).toBeGreaterThan(50_000);
    expect(taken(atVolume({ ...change, tidal: 161.1 })).wholePerMin).toBe(0);
  });
});

describe("properties", () => {
  const rates = fc.double({ min: 2, max: 80, noNaN: true });
  const co2s = fc.double({ min: 5, max: 200, noNaN: true });
  const volumes = fc.double({ min: 0, max: 20_000, noNaN: true });

  it("rate × CO2 stays the same, and whole breaths lie within a half", () => {
    fc.assert(
      fc.property(rates, co2s, co2s, (rate, co2, target) => {
        const now = plain(rate, co2, target);
        expect((now.perMin * target) / (rate * co2)).toBeCloseTo(1, 12);
        expect(Math.abs(now.wholePerMin - now.perMin)).toBeLessThanOrEqual(0.5);
      }),
    );
  });
  it("alveolar ventilation × CO2 stays the same when the breath changes too", () => {
    const breath = fc.double({ min: 162, max: 2000, noNaN: true });
    fc.assert(
      fc.property(rates, breath, breath, co2s, co2s, (rate, tidal, newTidal, co2, target) => {
        const { perMin: next } = taken(atVolume({ rate, tidal, newTidal, dead: 161, paco2: co2, target }));
        const dead = taken(ml(161));
        const before = alveolarVentilation(taken(perMin(rate)), taken(ml(tidal)), dead) * co2;
        const after = alveolarVentilation(next, taken(ml(newTidal)), dead) * target;
        expect(after / before).toBeCloseTo(1, 9);
      }),
    );
  });
  it("any volumes give a finite rate that is not negative, or a refusal", () => {
    fc.assert(
      fc.property(rates, volumes, volumes, volumes, co2s, co2s, (rate, tidal, newTidal, dead, co2, target) => {
        const result = atVolume({ rate, tidal, newTidal, dead, paco2: co2, target });
        // Between the two lie breaths so little above the dead space that the rate may overflow.
        if (tidal <= dead || newTidal <= dead) expect(result.ok).toBe(false);
        if (tidal > dead && newTidal > dead + 1e-6) expect(result.ok).toBe(true);
        if (!result.ok) return;
        expect(result.value.perMin).toBeGreaterThanOrEqual(0);
        expect(result.value.wholePerMin).toBeLessThan(Infinity);
      }),
    );
  });
});
