import { showAmount } from "../../language/sentences/number.ts";

/** Number and unit stay on one line. */
const NO_BREAK = "\u00a0";

/** What the end of a key says of its unit. The longest ending counts. */
const UNIT_OF_ENDING: Readonly<Record<string, string>> = {
  MmHg: "mmHg",
  CmH2O: "cmH2O",
  Pct: "%",
  Cel: "°C",
  MmolPerL: "mmol/L",
  MosmPerKg: "mOsm/kg",
  MlPerKg: "mL/kg",
  LPerMin: "L/min",
  PerMin: "/min",
  Ml: "mL",
  Mm: "mm",
  Cm: "cm",
  Kg: "kg",
  A: "years",
  Min: "min",
  S: "s",
};

const LONGEST_FIRST = Object.keys(UNIT_OF_ENDING).toSorted((a, b) => b.length - a.length);

/** The ending of a key that names its unit: "MmHg" of "sbpMmHg"; empty where it names none. */
export const unitEnding = (key: string): string =>
  LONGEST_FIRST.find((ending) => key.length > ending.length && key.endsWith(ending)) ?? "";

/** The unit of the innermost key that names one; empty for a ratio. */
export const unitOf = (path: readonly string[]): string =>
  UNIT_OF_ENDING[path.map(unitEnding).findLast((ending) => ending !== "") ?? ""] ?? "";

/** Never rounded: a file may hold more decimals than a dose is printed with, and a reader must see what it holds. */
export function showExact(value: number): string {
  const shown = showAmount(value);
  return Number(shown.replaceAll(NO_BREAK, "")) === value ? shown : String(value);
}

const MINUTE_S = 60;
const HOUR_S = 3600;

/** Seconds in the largest unit in which all of them are whole. */
function durations(valuesS: readonly number[]): { readonly values: readonly number[]; readonly unit: string } {
  const [size, unit] = (
    [
      [HOUR_S, "h"],
      [MINUTE_S, "min"],
    ] as const
  ).find(([each]) => valuesS.every((s) => s % each === 0)) ?? [1, "s"];
  return { values: valuesS.map((s) => s / size), unit };
}

/** Micrograms in full: a clipped one is taken for milligrams. */
const unitWords = (unit: string): string => unit.replace(/^mcg\b/u, "micrograms");

const withUnit = (text: string, unit: string): string => (unit === "" ? text : `${text}${NO_BREAK}${unitWords(unit)}`);

/** "110 mmHg"; seconds in whole minutes or hours where they are: "10 min". */
export function showQuantity(value: number, unit: string): string {
  const { values, unit: shown } = unit === "s" ? durations([value]) : { values: [value], unit };
  return withUnit(showExact(values[0] ?? value), shown);
}

/** "35 to 45 mmHg"; a span of no width is one number. */
export function showSpan(low: number, high: number, unit: string): string {
  if (low === high) return showQuantity(low, unit);
  const { values, unit: shown } = unit === "s" ? durations([low, high]) : { values: [low, high], unit };
  return withUnit(values.map(showExact).join(" to "), shown);
}
