import { expect, it } from "vitest";
import { keepUnits } from "../../src/ui/keepUnits.ts";

it.each([
  ["Runs at 0.1 micrograms/kg/min, 30 mL/h", "Runs at 0.1_micrograms/kg/min, 30_mL/h"],
  ["Bag empty in 8 h 19 min", "Bag empty in 8_h 19_min"],
  ["SpO2 94 %, EtCO2 35 to 45 mmHg.", "SpO2_94_%, EtCO2_35_to 45_mmHg."],
  ["Infusion stopped", "Infusion stopped"],
])("%s", (text, kept) => expect(keepUnits(text)).toBe(kept.replaceAll("_", "\u00a0")));
