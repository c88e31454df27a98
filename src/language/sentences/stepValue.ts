import type { StepValue } from "../../log/facts.ts";
import { soundAlikes } from "../numbers/soundAlikes.ts";
import { sayDoseUnit } from "./doseUnit.ts";
import { sayDigits, sayNumber, showAmount, showNumber } from "./number.ts";

type Carried = { readonly what: string; readonly unit: string; readonly low: number; readonly high: number };

/** Units that go without saying beside the name of the step; those of drugs are said in full and are not among them. */
const UNITS: Readonly<Record<string, string>> = {
  mm: "",
  size: "",
  attempts: "",
  mmHg: "",
  "%": "percent",
  min: "minutes",
  cm: "centimetres",
  cmH2O: "centimetres of water",
  "°C": "degrees",
  "mmol/L": "millimoles per litre",
  mL: "millilitres",
};
const ONE: Readonly<Record<string, string>> = { min: "minute", cm: "centimetre", mL: "millilitre" };

/** A tube is named with its tenth: "eight point zero" is heard as a size. */
const sayPlain = ({ value, unit }: StepValue): string =>
  unit === "mm" && Number.isInteger(value) ? `${sayNumber(value, 0)} point zero` : sayNumber(value, 2);

const CONCENTRATION = /^(?<amount>[^/]+)\/mL$/u;

/** "micrograms per millilitre": what is under the stroke is one. */
function sayDrugUnit(unit: string): string {
  const amount = CONCENTRATION.exec(unit)?.groups?.["amount"];
  return amount === undefined ? sayDoseUnit(unit) : `${sayDoseUnit(amount)} per millilitre`;
}

const unitOf = ({ value, unit }: StepValue): string =>
  (value === 1 ? ONE[unit] : undefined) ?? UNITS[unit] ?? sayDrugUnit(unit);

/** A concentration or a rate of a drug: a unit that a step shares with no vital and no piece of kit. */
const isOfDrug = (unit: string): boolean => UNITS[unit] === undefined;

/**
 * The value as it is read back. In two ways where the number sounds like another ("ninety, nine zero"), and always where
 * it is the strength or the rate of a drug.
 */
export function sayStepValue(said: StepValue): string {
  const number = sayPlain(said);
  const twice = isOfDrug(said.unit) || soundAlikes(number.split(" ")).length > 0;
  const digits = sayDigits(said.value);
  const unit = unitOf(said);
  if (twice && digits !== number) return [number, digits, ...(unit === "" ? [] : [unit])].join(", ");
  return unit === "" ? number : `${number} ${unit}`;
}

/** The same on the screen: "8.0 mm", "size 4". */
export function showStepValue({ value, unit }: StepValue): string {
  const number = unit === "mm" ? showNumber(value, 1) : showAmount(value);
  return unit === "size" ? `size ${number}` : `${number} ${unit}`;
}

/** "Negative" to the question for a value. */
export const NO_VALUE = "No value";

/** Asks once for the value of a step that was answered without it: "Tube size?" */
export const askStepValue = ({ what }: Carried): string => `${what.charAt(0).toUpperCase()}${what.slice(1)}?`;

/** The value is not believed, with the limits that it must keep. */
export const sayOutside = ({ what, unit, low, high }: Carried, value: number): string => {
  const [said, from, to] = [value, low, high].map((v) => sayPlain({ value: v, unit }));
  return `${what} ${said}: outside ${from} to ${to}. Say it again.`;
};
