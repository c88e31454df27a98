import { describe, expect, it } from "vitest";
import { amount } from "../../src/core/doseAmount.ts";
import type { DoseUnit } from "../../src/core/doseUnits.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import { osmoticEquivalents } from "../../src/rules/osmoticEquivalents.ts";

function equivalents(id: string, value: number, unit: DoseUnit): Readonly<Record<string, number>> | undefined {
  const dose = amount(value, unit);
  if (!dose.ok) throw new Error("no amount");
  const found = osmoticEquivalents(defaultProtocol, id, dose.value);
  return found && Object.fromEntries(found.others.map(({ osmotic, volumeMl }) => [osmotic.id, volumeMl]));
}

describe("volumes of the same osmotic load", () => {
  // Worked by hand from the osmolarities of full dissociation: 30 mL of 23.4 % are 240.2 mOsm.
  it.each([
    ["sodiumChloride3", 234.0],
    ["sodiumChloride5", 140.4],
    ["sodiumChloride7point5", 93.6],
    ["mannitol20", 218.8],
    ["sodiumBicarbonate8point4", 120.1],
  ])("of 30 mL of sodium chloride 23.4 %%: %s", (id, volumeMl) => {
    expect(equivalents("sodiumChloride23point4", 30, "mL")?.[id]).toBeCloseTo(volumeMl, 0);
    expect(Math.abs((equivalents("sodiumChloride23point4", 30, "mL")?.[id] ?? NaN) - volumeMl)).toBeLessThan(0.06);
  });

  it("take a dose in grams by its volume: 40 g of mannitol are 200 mL, 219.6 mOsm", () => {
    expect(equivalents("mannitol20", 40, "g")?.["sodiumChloride3"]).toBeCloseTo((219.6 / 1026.7) * 1000, 0);
  });

  it("are of osmotic agents alone, and never of itself", () => {
    expect(equivalents("ketamine", 40, "mg")).toBeUndefined();
    expect(equivalents("mannitol20", 40, "g")).not.toHaveProperty("mannitol20");
  });
});
