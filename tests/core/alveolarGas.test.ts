import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  alveolarOxygen,
  barometricMmHg,
  inspiredFraction,
  shortAlveolarOxygen,
  type BreathedGas,
} from "../../src/core/alveolarGas.ts";
import { paco2 } from "../../src/core/carbonDioxide.ts";
import { mmHg } from "../../src/core/mmHg.ts";
import { checkRows } from "../tables/checkRows.ts";
import { ALVEOLAR_ROWS, SHORT_ALVEOLAR_ROWS } from "../tables/oxygen.ts";
import { taken } from "./taken.ts";

const gas = (fio2: number, pb: number, co2: number): BreathedGas => ({
  fio2: taken(inspiredFraction(fio2)),
  barometricMmHg: taken(barometricMmHg(pb)),
  paco2MmHg: taken(paco2(co2)),
});

checkRows("alveolar oxygen, full form", ALVEOLAR_ROWS, (row) =>
  taken(alveolarOxygen(gas(row.fio2, row.pb, row.paco2))),
);
checkRows("alveolar oxygen, short form", SHORT_ALVEOLAR_ROWS, (row) =>
  taken(shortAlveolarOxygen(gas(row.fio2, row.pb, row.paco2))),
);

describe("what can be entered", () => {
  it.each([0.21, 1])("takes an inspired fraction of %s", (n) =>
    expect(inspiredFraction(n)).toMatchObject({ ok: true }),
  );
  it.each([0.2099, 1.0001, 21, 50])("refuses an inspired fraction of %s", (n) => {
    expect(inspiredFraction(n)).toEqual({ ok: false, error: { kind: "out-of-range", min: 0.21, max: 1 } });
  });
  it.each([250, 253, 565, 760, 820])("takes %s mmHg of air", (n) => {
    expect(barometricMmHg(n)).toMatchObject({ ok: true });
  });
  it.each([101.3, 249.9, 820.1, 1013])("refuses %s mmHg of air: kPa, hPa or a slip", (n) => {
    expect(barometricMmHg(n)).toEqual({ ok: false, error: { kind: "out-of-range", min: 250, max: 820 } });
  });
});

describe("what cannot be is refused, not floored", () => {
  const refused = { ok: false, error: { kind: "no-oxygen-left" } };

  it("a PaCO2 of 125 in room air leaves a trace, one of 126 leaves nothing", () => {
    expect(taken(alveolarOxygen(gas(0.21, 760, 125)))).toBeCloseTo(0.04, 2);
    expect(alveolarOxygen(gas(0.21, 760, 126))).toEqual(refused);
  });
  it("the short form gives out earlier", () => {
    expect(taken(shortAlveolarOxygen(gas(0.21, 760, 119)))).toBeCloseTo(0.98, 2);
    expect(shortAlveolarOxygen(gas(0.21, 760, 120))).toEqual(refused);
  });
  it("exactly nothing left is refused too", () => {
    const none = { ...gas(1, 250, 200), barometricMmHg: taken(mmHg(247)) };
    expect(alveolarOxygen(none)).toEqual(refused);
  });
  it("on the highest summit an ordinary PaCO2 cannot be in air", () => {
    expect(alveolarOxygen(gas(0.21, 253, 40))).toEqual(refused);
    expect(taken(alveolarOxygen(gas(0.21, 253, 13)))).toBeGreaterThan(20);
  });
});

describe("properties", () => {
  const gases = fc
    .tuple(
      fc.double({ min: 0.21, max: 1, noNaN: true }),
      fc.double({ min: 250, max: 820, noNaN: true }),
      fc.double({ min: 5, max: 200, noNaN: true }),
    )
    .map(([fio2, pb, co2]) => gas(fio2, pb, co2));

  it.each([alveolarOxygen, shortAlveolarOxygen])(
    "%o is above zero and below the inspired pressure, or refused",
    (form) => {
      fc.assert(
        fc.property(gases, (given) => {
          const result = form(given);
          if (!result.ok) return;
          expect(result.value).toBeGreaterThan(0);
          expect(result.value).toBeLessThan(given.fio2 * (given.barometricMmHg - 47));
        }),
      );
    },
  );
  it("the forms differ by PaCO2 × FiO2 / 4, the full one above", () => {
    fc.assert(
      fc.property(gases, (given) => {
        const short = shortAlveolarOxygen(given);
        if (!short.ok) return;
        const above = taken(alveolarOxygen(given)) - short.value;
        expect(above).toBeCloseTo((given.paco2MmHg * given.fio2) / 4, 9);
      }),
    );
  });
  it("in pure oxygen CO2 takes its own place and no more", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 250, max: 820, noNaN: true }),
        fc.double({ min: 5, max: 200, noNaN: true }),
        (pb, co2) => {
          expect(taken(alveolarOxygen(gas(1, pb, co2)))).toBeCloseTo(pb - 47 - co2, 9);
        },
      ),
    );
  });
});
