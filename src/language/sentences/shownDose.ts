import type { Strength } from "../../core/concentration.ts";
import type { SaidAmount, SaidRate } from "../../log/careFacts.ts";
import type { StrengthEntry } from "../../log/careState.ts";
import type { FluidTotal, GivenTotal } from "../../log/totals.ts";
import { roundedDose, showAmount, showExactly } from "./number.ts";

/** Micrograms in full: its short form is read as milligrams. */
const showUnit = (unit: string): string => unit.replace("mcg", "micrograms");

/** "100 micrograms", "0.15 micrograms/kg/min". */
export const showDose = ({ value, unit }: SaidAmount | SaidRate): string => `${showExactly(value)} ${showUnit(unit)}`;

const times = (count: number): string => (count === 1 ? "1 dose" : `${count} doses`);

export const showStrength = ({ amount, unit, volumeMl }: Strength): string =>
  `Concentration ${showDose({ value: amount, unit })} in ${showExactly(volumeMl)} mL, affirmed`;

export const showGivenTotal = (total: GivenTotal): string =>
  total.ok
    ? `Given ${showDose({ value: roundedDose(total.value.value), unit: total.value.unit })}, ${times(total.value.count)}`
    : "Given in units that have no sum";

/** A stopped infusion is said to be one. */
export function showInfusion(rate: SaidRate, mlPerH: number | undefined): string {
  if (rate.value === 0) return "Infusion stopped";
  const pump = mlPerH === undefined || rate.unit === "mL/h" ? "" : `, ${showExactly(mlPerH)} mL/h`;
  return `Runs at ${showDose(rate)}${pump}`;
}

/** Whole minutes, rounded down: nothing lasts longer than it is shown to. */
export function showEmpty(inMs: number): string {
  const minutes = Math.floor(inMs / 60_000);
  if (minutes <= 0) return "Bag should be empty";
  return minutes < 60
    ? `Bag empty in ${minutes} min`
    : `Bag empty in ${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}

export const showFluid = (
  label: string,
  { volumeMl }: FluidTotal,
  perKilo: { mlPerKg: number; weight: string } | undefined,
) =>
  `${label} ${showAmount(volumeMl)} mL${perKilo === undefined ? "" : `, ${showAmount(roundedDose(perKilo.mlPerKg))} mL/kg${perKilo.weight === "estimated" ? ", weight estimated" : ""}`}`;

type DrugClass = StrengthEntry["drugClass"];

const CLASSES: Readonly<Record<DrugClass, string>> = {
  induction: "induction",
  benzodiazepine: "benzodiazepine",
  muscleRelaxant: "muscle relaxant",
  opioid: "opioid",
  vasopressor: "vasopressor",
  localAnaesthetic: "local anaesthetic",
  anticholinergic: "anticholinergic",
  relaxantReversal: "relaxant reversal",
  osmotic: "osmotic",
  other: "no class colour",
};
/** The class in words beside its colour, which is never alone. */
export const showDrugClass = (drugClass: DrugClass): string => CLASSES[drugClass];
