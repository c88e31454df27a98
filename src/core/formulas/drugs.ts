import type { Formula, Source } from "../derivation.ts";

const practice: Source = { reference: "common practice, no source", kind: "common-practice", primaryRead: false };
const arithmetic: Source = { reference: "arithmetic on the values named", kind: "memory", primaryRead: false };
const molarMasses: Source = {
  reference: "molar masses 58.44, 182.17 and 84.007 g/mol, every particle free; from memory",
  kind: "memory",
  primaryRead: false,
};

/** How each result of the drug arithmetic is worked out, by the name of its function. */
export const drugFormulas = {
  convertAmount: { name: "amount in another unit", expression: "1 g = 1000 mg = 1,000,000 mcg", source: arithmetic },
  planDose: {
    name: "dose",
    expression: "dose per kg × weight, not under the minimum, not over the cap",
    source: practice,
  },
  compareDose: { name: "difference from the plan", expression: "(dose / planned dose − 1) × 100", source: arithmetic },
  perMl: { name: "concentration", expression: "amount / volume", source: arithmetic },
  percentConcentration: {
    name: "concentration of a percentage",
    expression: "percent = g in 100 mL",
    source: arithmetic,
  },
  volumeFor: { name: "volume to give", expression: "dose / concentration", source: arithmetic },
  doseIn: { name: "dose in a volume", expression: "volume × concentration", source: arithmetic },
  roundToSyringe: {
    name: "volume a syringe can show",
    expression: "volume to the nearest line of the smallest syringe that holds it",
    source: practice,
  },
  drawUp: {
    name: "dose to draw up",
    expression: "dose / concentration, to the nearest line of the syringe, not over the cap",
    source: practice,
  },
  pumpRate: { name: "pump rate", expression: "rate × kg × 60 / concentration", source: arithmetic },
  planInfusion: { name: "pump rates of the order", expression: "rate × kg × 60 / concentration", source: arithmetic },
  orderedRate: { name: "infusion rate", expression: "mL/h × concentration / (kg × 60)", source: arithmetic },
  rateOver: { name: "pump rate for a time", expression: "volume × 60 / minutes", source: arithmetic },
  timeToEmpty: { name: "time to empty", expression: "volume left × 60 / mL/h", source: arithmetic },
  infusedVolume: { name: "volume infused", expression: "Σ mL/h × minutes / 60", source: arithmetic },
  dilute: { name: "dilution", expression: "stock to take = final volume × target / stock", source: arithmetic },
  mixedConcentration: {
    name: "resulting concentration",
    expression: "stock × volume taken / (volume taken + volume added)",
    source: arithmetic,
  },
  compareStrength: { name: "ratio of strengths", expression: "actual / intended", source: arithmetic },
  checkRecipe: {
    name: "strength of a recipe against its claim",
    expression: "stock × volume taken / (volume taken + volume added) / intended",
    source: arithmetic,
  },
  totalGiven: { name: "total given", expression: "Σ doses", source: arithmetic },
  totalsByDrug: { name: "total of each drug", expression: "Σ doses of the drug", source: arithmetic },
  totalPerKg: { name: "total per kilogram", expression: "Σ doses / weight", source: arithmetic },
  repeatState: { name: "earliest next dose", expression: "last dose + interval", source: arithmetic },
  osmolarity: { name: "osmolarity", expression: "percent × 10 / molar mass × particles × 1000", source: molarMasses },
  osmolarLoad: { name: "osmotic load", expression: "mL / 1000 × mOsm/L", source: arithmetic },
  equiosmolarVolume: {
    name: "volume with the same osmotic load",
    expression: "mL × mOsm/L / mOsm/L of the other",
    source: arithmetic,
  },
} as const satisfies Record<string, Formula>;
