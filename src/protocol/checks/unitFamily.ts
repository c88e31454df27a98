import type { DoseUnit, RateUnit } from "../../core/doseUnits.ts";

/** What is counted: amounts of one family can be turned into one another, those of two cannot. */
export type Family = "mass" | "activity" | "substance" | "volume";

const FAMILIES: Readonly<Record<DoseUnit, Family>> = {
  mcg: "mass",
  mg: "mass",
  g: "mass",
  units: "activity",
  mmol: "substance",
  mL: "volume",
};

/** How many of the smallest unit of its family. */
const SIZE: Readonly<Record<DoseUnit, number>> = { mcg: 1, mg: 1e3, g: 1e6, units: 1, mmol: 1, mL: 1 };

export const familyOf = (unit: DoseUnit): Family => FAMILIES[unit];

/** The family of what runs in: "mcg" of "mcg/kg/min". */
export const rateFamily = (unit: RateUnit): Family => FAMILIES[unit.slice(0, unit.indexOf("/")) as DoseUnit];

/** An amount in the smallest unit of its family. */
export const inSmallest = (amount: number, unit: DoseUnit): number => amount * SIZE[unit];
