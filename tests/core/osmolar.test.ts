import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { percentConcentration } from "../../src/core/concentration.ts";
import { planDose } from "../../src/core/dosePlan.ts";
import { doseIn, volumeFor } from "../../src/core/drawUp.ts";
import { equiosmolarVolume, osmolarity, osmolarLoad } from "../../src/core/osmolar.ts";
import { ml } from "../../src/core/quantities.ts";
import { checkRows } from "../tables/checkRows.ts";
import { EQUAL_AS_PUBLISHED, EQUAL_LOAD_ROWS, GRAM_ROWS, LOAD_ROWS, OSMOLARITY_ROWS } from "../tables/osmolar.ts";
import { anyMl, anyNumber, weighing } from "./doseArbitraries.ts";
import { taken } from "./taken.ts";

const vol = (n: number) => taken(ml(n));
const of = (agent: Parameters<typeof osmolarity>[0]) => taken(osmolarity(agent));

checkRows("osmolarity", OSMOLARITY_ROWS, of);
checkRows("osmotic load", LOAD_ROWS, ({ agent, volumeMl }) => osmolarLoad(vol(volumeMl), of(agent)));
checkRows("equal load", EQUAL_LOAD_ROWS, ({ from, volumeMl, to }) =>
  equiosmolarVolume(vol(volumeMl), of(from), of(to)),
);
checkRows("grams", GRAM_ROWS, ({ percent, volumeMl }) => {
  const grams = taken(doseIn(vol(volumeMl), taken(percentConcentration(percent))));
  expect(grams.unit).toBe("g");
  return grams.value;
});

it("what a series published as equal in load is, to 1 %", () => {
  const { one, other } = EQUAL_AS_PUBLISHED;
  const [a, b] = [one, other].map(({ agent, volumeMl }) => osmolarLoad(vol(volumeMl), of(agent)));
  // Printed as whole millilitres of 85: half of one is 0.6 %, and the word "equal" is no closer than that.
  expect(Math.abs(a! / b! - 1)).toBeLessThan(0.01);
});

it("mannitol 0.5 g/kg at 80 kg is 200 mL of 20 %", () => {
  const order = { per: "kg", unit: "g", low: 0.5, usual: 0.5, high: 1, weight: "actual" } as const;
  const { usual } = taken(planDose(order, weighing(80), { shocked: false }));
  expect(volumeFor(usual, taken(percentConcentration(20)))).toEqual({ ok: true, value: 200 });
});

describe("the door", () => {
  const refused = { ok: false, error: { kind: "out-of-range", min: 0.01, max: 100 } };
  it.each([0, 0.0099, 100.1, -3])("refuses %d %%", (percent) => {
    expect(osmolarity({ solute: "mannitol", percent })).toEqual(refused);
  });
  it.each([0.01, 100])("takes %d %%", (percent) => {
    expect(osmolarity({ solute: "mannitol", percent }).ok).toBe(true);
  });
});

const anyAgent = fc.record({
  solute: fc.constantFrom("sodiumChloride", "mannitol", "sodiumBicarbonate"),
  percent: fc.double({ min: 0.01, max: 100, noNaN: true }),
});

describe("properties", () => {
  it("the equal volume has the same load", () => {
    fc.assert(
      fc.property(anyMl, anyAgent, anyAgent, (volumeMl, one, other) => {
        const load = osmolarLoad(volumeMl, of(one));
        const equal = osmolarLoad(equiosmolarVolume(volumeMl, of(one), of(other)), of(other));
        expect(Number.isFinite(load) && load >= 0).toBe(true);
        expect(Math.abs(equal - load)).toBeLessThanOrEqual(1e-12 * load + Number.MIN_VALUE * 1000);
      }),
    );
  });
  it("is total", () => {
    fc.assert(
      fc.property(anyNumber, (percent) => {
        const result = osmolarity({ solute: "sodiumChloride", percent });
        if (result.ok) expect(result.value > 0 && Number.isFinite(result.value)).toBe(true);
      }),
    );
  });
});
