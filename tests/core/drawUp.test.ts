import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { concentration } from "../../src/core/concentration.ts";
import { convertAmount } from "../../src/core/doseAmount.ts";
import { doseIn, volumeFor } from "../../src/core/drawUp.ts";
import { ml } from "../../src/core/quantities.ts";
import { checkRows } from "../tables/checkRows.ts";
import { VOLUME_ROWS } from "../tables/doses.ts";
import { anyAmount, anyConcentration, anyMl, some, strong } from "./doseArbitraries.ts";
import { taken } from "./taken.ts";

checkRows("volume of a dose", VOLUME_ROWS, ({ dose, strength }) =>
  taken(volumeFor(some(dose.value, dose.unit), taken(concentration(strength)))),
);

describe("volume of a dose", () => {
  it("refuses a dose of another kind: a volume of fluid is no mass, units are none", () => {
    expect(volumeFor(some(250, "mL"), strong(3, "g", 100))).toEqual({
      ok: false,
      error: { kind: "unit-mismatch", from: "mL", to: "g" },
    });
    expect(volumeFor(some(1, "units"), strong(3, "mg")).ok).toBe(false);
  });
  it("refuses more than any bag holds", () => {
    expect(volumeFor(some(1000, "g"), strong(1, "mcg"))).toEqual({
      ok: false,
      error: { kind: "out-of-range", min: 0, max: 20_000 },
    });
  });
  it("is total: a finite volume, or a reason", () => {
    fc.assert(
      fc.property(anyAmount, anyConcentration, (dose, of) => {
        const volume = volumeFor(dose, of);
        if (volume.ok) expect(volume.value >= 0 && volume.value <= 20_000).toBe(true);
        else {
          const fits = convertAmount(dose, of.amount.unit).ok;
          expect(volume.error.kind).toBe(fits ? "out-of-range" : "unit-mismatch");
        }
      }),
    );
  });
});

describe("dose in a volume", () => {
  it("is in the unit of the strength", () => {
    expect(doseIn(taken(ml(2.5)), strong(4, "mg", 250))).toEqual({ ok: true, value: some(0.04, "mg") });
  });
  it("of nothing is refused", () => expect(doseIn(taken(ml(0)), strong(4, "mg", 250)).ok).toBe(false));
  it("undoes the volume of a dose", () => {
    fc.assert(
      fc.property(anyMl, anyConcentration, (volumeMl, of) => {
        const dose = doseIn(volumeMl, of);
        if (!dose.ok) return;
        const back = volumeFor(dose.value, of);
        // The very largest may come back a hair over the door.
        if (back.ok) expect(Math.abs(back.value - volumeMl)).toBeLessThanOrEqual(1e-12 * volumeMl);
        else expect(volumeMl).toBeGreaterThan(19_999.999);
      }),
    );
  });
});
