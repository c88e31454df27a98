import type { Formula } from "../derivation.ts";
import { ARITHMETIC, COMMON_PRACTICE, fromMemory } from "./sources.ts";

const MOLAR_MASSES = fromMemory("molar masses 58.44, 182.17 and 84.007 g/mol, every particle free; from memory");

/** How each result of the drug arithmetic is worked out, by the name of its function. */
export const drugFormulas = {
  convertAmount: { name: "amount in another unit", expression: "1 g = 1000 mg = 1,000,000 mcg", source: ARITHMETIC },
  planDose: {
    name: "dose",
    expression: "dose per kg × weight, not under the minimum, not over the cap",
    source: COMMON_PRACTICE,
  },
  compareDose: { name: "difference from the plan", expression: "(dose / planned dose − 1) × 100", source: ARITHMETIC },
  perMl: { name: "concentration", expression: "amount / volume", source: ARITHMETIC },
  percentConcentration: {
    name: "concentration of a percentage",
    expression: "percent = g in 100 mL",
    source: ARITHMETIC,
  },
  volumeFor: { name: "volume to give", expression: "dose / concentration", source: ARITHMETIC },
  doseIn: { name: "dose in a volume", expression: "volume × concentration", source: ARITHMETIC },
  roundToSyringe: {
    name: "volume a syringe can show",
    expression: "volume to the nearest line of the smallest syringe that holds it",
    source: COMMON_PRACTICE,
  },
  drawUp: {
    name: "dose to draw up",
    expression: "dose / concentration, to the nearest line of the syringe, not over the cap",
    source: COMMON_PRACTICE,
  },
  pumpRate: { name: "pump rate", expression: "rate × kg × 60 / concentration", source: ARITHMETIC },
  planInfusion: { name: "pump rates of the order", expression: "rate × kg × 60 / concentration", source: ARITHMETIC },
  orderedRate: { name: "infusion rate", expression: "mL/h × concentration / (kg × 60)", source: ARITHMETIC },
  rateOver: { name: "pump rate for a time", expression: "volume × 60 / minutes", source: ARITHMETIC },
  timeToEmpty: { name: "time to empty", expression: "volume left × 60 / mL/h", source: ARITHMETIC },
  infusedVolume: { name: "volume infused", expression: "Σ mL/h × minutes / 60", source: ARITHMETIC },
  dilute: { name: "dilution", expression: "stock to take = final volume × target / stock", source: ARITHMETIC },
  mixedConcentration: {
    name: "resulting concentration",
    expression: "stock × volume taken / (volume taken + volume added)",
    source: ARITHMETIC,
  },
  compareStrength: { name: "ratio of strengths", expression: "actual / intended", source: ARITHMETIC },
  checkRecipe: {
    name: "strength of a recipe against its claim",
    expression: "stock × volume taken / (volume taken + volume added) / intended",
    source: ARITHMETIC,
  },
  totalGiven: { name: "total given", expression: "Σ doses", source: ARITHMETIC },
  totalsByDrug: { name: "total of each drug", expression: "Σ doses of the drug", source: ARITHMETIC },
  totalPerKg: { name: "total per kilogram", expression: "Σ doses / weight", source: ARITHMETIC },
  repeatState: { name: "earliest next dose", expression: "last dose + interval", source: ARITHMETIC },
  osmolarity: { name: "osmolarity", expression: "percent × 10 / molar mass × particles × 1000", source: MOLAR_MASSES },
  osmolarLoad: { name: "osmotic load", expression: "mL / 1000 × mOsm/L", source: ARITHMETIC },
  equiosmolarVolume: {
    name: "volume with the same osmotic load",
    expression: "mL × mOsm/L / mOsm/L of the other",
    source: ARITHMETIC,
  },
} as const satisfies Record<string, Formula>;
