import { OLDEST_EXACT_A } from "../../core/age.ts";
import { VITALS, type VitalCode } from "../../core/vitals.ts";
import type { SaidUnit } from "../../log/facts.ts";
import { sayNumber, showAmount, showNumber } from "./number.ts";
import { saySafely } from "./safeNumber.ts";

/** How each unit is said and printed. Said in full: a clipped unit is a misheard unit. */
const UNITS: Readonly<Record<SaidUnit, { readonly said: string; readonly shown: string; readonly one?: string }>> = {
  mmHg: { said: "millimetres of mercury", shown: "mmHg" },
  kPa: { said: "kilopascals", shown: "kPa" },
  cmH2O: { said: "centimetres of water", shown: "cmH2O" },
  "/min": { said: "per minute", shown: "/min" },
  "%": { said: "percent", shown: "%" },
  Cel: { said: "degrees Celsius", shown: "°C" },
  degF: { said: "degrees Fahrenheit", shown: "°F" },
  "mmol/L": { said: "millimoles per litre", shown: "mmol/L" },
  "mg/dL": { said: "milligrams per decilitre", shown: "mg/dL" },
  mm: { said: "millimetres", shown: "mm" },
  kg: { said: "kilograms", shown: "kg" },
  lb: { said: "pounds", shown: "lb" },
  cm: { said: "centimetres", shown: "cm" },
  in: { said: "inches", shown: "in" },
  a: { said: "years", shown: "years", one: "year" },
  mo: { said: "months", shown: "months", one: "month" },
  "{score}": { said: "", shown: "" },
};

/** UCUM code of the stored unit → the same unit as people say it. */
const SAID_UNIT = {
  "mm[Hg]": "mmHg",
  "/min": "/min",
  "%": "%",
  Cel: "Cel",
  "mmol/L": "mmol/L",
  "{score}": "{score}",
  mm: "mm",
  kg: "kg",
  cm: "cm",
  a: "a",
} as const satisfies Record<(typeof VITALS)[VitalCode]["unit"], SaidUnit>;

/** These are hard to place without their unit, and short enough to say with it. */
const SAID_WITH_UNIT: ReadonlySet<VitalCode> = new Set(["weight", "height", "age"]);

/** "kilopascals"; empty for a score. */
export const saidUnitWords = (unit: SaidUnit): string => UNITS[unit].said;

/** "kPa", "°C"; empty for a score. */
export const showUnit = (unit: SaidUnit): string => UNITS[unit].shown;

const spaced = (...parts: readonly string[]): string => parts.filter((part) => part !== "").join(" ");

/** Some units are said of one in another form. */
const ofOne = (number: string, unit: SaidUnit): string | undefined =>
  number === "one" || number === "1" ? UNITS[unit].one : undefined;

/** A spoken number with its unit, "one month"; "fifteen, one five, kilopascals". */
const withSaidUnit = (number: string, unit: SaidUnit): string =>
  spaced(
    number.includes(",") && saidUnitWords(unit) !== "" ? `${number},` : number,
    ofOne(number, unit) ?? saidUnitWords(unit),
  );

/** A printed number with its unit, "1 month". */
const withShownUnit = (number: string, unit: SaidUnit): string => spaced(number, ofOne(number, unit) ?? showUnit(unit));

/** An age that is not told exactly. */
const isOver = (code: VitalCode, value: number): boolean => code === "age" && value > OLDEST_EXACT_A;

/**
 * A vital as it is read back, e.g. "MAP seventy seven", "sats ninety four", "ICP fifteen, one five". The stored unit is
 * understood, except for body measures, which are said with it.
 *
 * @param value in the canonical unit of the vital (`VITALS`); rounded to its decimals.
 */
export function sayVital(code: VitalCode, value: number): string {
  if (isOver(code, value)) return `${VITALS.age.spokenName} over ${sayNumber(OLDEST_EXACT_A, 0)}`;
  const { decimals, spokenName, unit } = VITALS[code];
  const number = saySafely(code, value, SAID_UNIT[unit], decimals);
  return spaced(spokenName, SAID_WITH_UNIT.has(code) ? withSaidUnit(number, SAID_UNIT[unit]) : number);
}

/** "one ten over sixty"; "systolic one ten" when there is no diastolic. mmHg. Once each: for what was read back before. */
export const sayPair = (sbpMmHg: number, dbpMmHg: number | undefined): string =>
  dbpMmHg === undefined
    ? `${VITALS.sbp.spokenName} ${sayNumber(sbpMmHg, VITALS.sbp.decimals)}`
    : `${sayNumber(sbpMmHg, VITALS.sbp.decimals)} over ${sayNumber(dbpMmHg, VITALS.dbp.decimals)}`;

/** "pressure one ten over sixty"; "systolic one ten" when there is no diastolic. mmHg. */
export function sayPressure(sbpMmHg: number, dbpMmHg: number | undefined): string {
  if (dbpMmHg === undefined) return sayVital("sbp", sbpMmHg);
  const [sbp, dbp] = [
    saySafely("sbp", sbpMmHg, "mmHg", VITALS.sbp.decimals),
    saySafely("dbp", dbpMmHg, "mmHg", VITALS.dbp.decimals),
  ];
  return `pressure ${sbp}${sbp.includes(",") ? "," : ""} over ${dbp}`;
}

/** A value and its unit as they were said, before any conversion: "four point five kilopascals". */
export const saySaid = (code: VitalCode, value: number, unit: SaidUnit, decimals: 0 | 1 | 2 = 2): string =>
  withSaidUnit(saySafely(code, value, unit, decimals), unit);

/** A number in a unit of choice, fixed decimals: "5.1 kPa". */
export const showIn = (value: number, unit: SaidUnit, decimals: 0 | 1 | 2): string =>
  withShownUnit(showNumber(value, decimals), unit);

/** A value of a vital without its label: "77 mmHg", "36.5 °C". Canonical unit, fixed decimals. */
export const showValue = (code: VitalCode, value: number): string =>
  isOver(code, value)
    ? `over ${showIn(OLDEST_EXACT_A, "a", 0)}`
    : showIn(value, SAID_UNIT[VITALS[code].unit], VITALS[code].decimals);

/** A vital as printed: "MAP 77 mmHg", "SpO2 94 %". Canonical unit, fixed decimals. */
export const showVital = (code: VitalCode, value: number): string => spaced(VITALS[code].label, showValue(code, value));

/** "110/60 mmHg"; "110 mmHg systolic" when there is no diastolic. */
export const showPressure = (sbpMmHg: number, dbpMmHg: number | undefined): string =>
  dbpMmHg === undefined
    ? `${showValue("sbp", sbpMmHg)} systolic`
    : `${showNumber(sbpMmHg, VITALS.sbp.decimals)}/${showValue("dbp", dbpMmHg)}`;

/** A value and its unit as they were said: "4.5 kPa". */
export const showSaid = (value: number, unit: SaidUnit): string => withShownUnit(showAmount(value), unit);

type Age = { readonly seconds: number } | { readonly hours: number; readonly minutes: number };

/** Rounded to what is worth saying: ten seconds under a minute, then whole minutes. */
function roundedAge(ageMs: number): Age {
  const seconds = 10 * Math.round(Math.max(0, ageMs) / 10_000);
  if (seconds < 60) return { seconds };
  const minutes = Math.round(ageMs / 60_000);
  return { hours: Math.floor(minutes / 60), minutes: minutes % 60 };
}

/** The age of a value aloud: "now", "forty seconds", "two minutes", "an hour ten". */
export function sayAge(ageMs: number): string {
  const age = roundedAge(ageMs);
  if ("seconds" in age) return age.seconds === 0 ? "now" : `${sayNumber(age.seconds, 0)} seconds`;
  const { hours, minutes } = age;
  if (hours === 0) return minutes === 1 ? "one minute" : `${sayNumber(minutes, 0)} minutes`;
  const sayHours = hours === 1 ? "an hour" : `${sayNumber(hours, 0)} hours`;
  return spaced(sayHours, minutes === 0 ? "" : sayNumber(minutes, 0));
}

/** The age of a value on the screen: "now", "40 s ago", "2 min ago", "1 h 10 min ago". */
export function showAge(ageMs: number): string {
  const age = roundedAge(ageMs);
  if ("seconds" in age) return age.seconds === 0 ? "now" : `${age.seconds} s ago`;
  const { hours, minutes } = age;
  if (hours === 0) return `${minutes} min ago`;
  return minutes === 0 ? `${hours} h ago` : `${hours} h ${minutes} min ago`;
}
