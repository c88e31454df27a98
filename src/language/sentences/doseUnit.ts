import type { DoseUnit } from "../../core/doseUnits.ts";

/** In full, since a clipped unit is a misheard unit. */
const AMOUNTS: Readonly<Record<DoseUnit, string>> = {
  mcg: "micrograms",
  mg: "milligrams",
  g: "grams",
  units: "units",
  mmol: "millimoles",
  mL: "millilitres",
};
const PARTS: Readonly<Record<string, string>> = { ...AMOUNTS, kg: "kilo", min: "minute", h: "hour" };

/** The unit of a dose or of a rate aloud: "milligrams", "micrograms per kilo per minute". */
export const sayDoseUnit = (unit: string): string =>
  unit
    .split("/")
    .map((part) => PARTS[part] ?? part)
    .join(" per ");
