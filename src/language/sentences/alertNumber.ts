import { fromCanonical } from "../../core/convert.ts";
import { VITALS, type VitalCode } from "../../core/vitals.ts";
import type { AlertBody } from "../../rules/alerts/condition.ts";
import { sayNumber, showNumber } from "./number.ts";
import type { UsualUnits } from "./recordedValue.ts";
import { sayMeanName } from "./status.ts";
import { saidUnitWords, showUnit } from "./vital.ts";

type Limit = Extract<AlertBody, { kind: "limit" }>;
type WatchedCode = Limit["code"];
type Side = Limit["side"];
type Origin = Limit["origin"];

const isVital = (code: WatchedCode): code is Exclude<WatchedCode, "cpp" | "cppBound"> =>
  code !== "cpp" && code !== "cppBound";

/** "MAP", "measured MAP", "CPP", "end tidal". */
export function sayWatched(code: WatchedCode, origin: Origin): string {
  if (code === "map") return sayMeanName(origin);
  return isVital(code) ? VITALS[code].spokenName : "CPP";
}

export const showWatched = (code: WatchedCode): string => (isVital(code) ? VITALS[code].label : "CPP");

type Usual = { readonly scale: (value: number) => number; readonly decimals: 0 | 1; readonly unit?: "kPa" | "mg/dL" };

const plain = (decimals: 0 | 1): Usual => ({ scale: (value) => value, decimals });

function converted(code: VitalCode, unit: "kPa" | "mg/dL", decimals: 0 | 1): Usual {
  const scale = (value: number): number => {
    const result = fromCanonical(code, value, unit);
    return result.ok ? result.value : value;
  };
  return { scale, decimals, unit };
}

/** In which unit and with how many decimals a watched value is given here. */
function usualOf(code: WatchedCode, { co2, glucose }: UsualUnits): Usual {
  if (code === "etco2") return co2 === "kPa" ? converted(code, "kPa", 1) : plain(0);
  if (code === "glucose") return glucose === "mg/dL" ? converted(code, "mg/dL", 0) : plain(1);
  return plain(code === "temp" ? 1 : 0);
}

const rounded = (value: number, decimals: 0 | 1): number => Number(showNumber(value, decimals));

/**
 * A number beside its limit, as it is given here. The difference is taken from the numbers as they are given, so that the
 * listener's own subtraction agrees; one that rounds to nothing is called "just".
 */
function compare(code: WatchedCode, value: number, target: number, usual: UsualUnits) {
  const { scale, decimals, unit } = usualOf(code, usual);
  const [given, limit] = [rounded(scale(value), decimals), rounded(scale(target), decimals)];
  return { given, limit, by: rounded(Math.abs(given - limit), decimals), decimals, unit };
}

/** "sixty five"; "five point one kilopascals". */
export function sayWatchedNumber(code: WatchedCode, value: number, usual: UsualUnits): string {
  const { scale, decimals, unit } = usualOf(code, usual);
  const number = sayNumber(scale(value), decimals);
  return unit === undefined ? number : `${number} ${saidUnitWords(unit)}`;
}

/** "Ten over one twenty" would be heard as a pressure. */
const SIDE_SAID: Readonly<Record<Side, string>> = { under: "under", over: "above" };

/** "twenty five under ninety", "just above forty five". */
export function sayBeyond(code: WatchedCode, value: number, target: number, side: Side, usual: UsualUnits): string {
  const { by, limit, decimals } = compare(code, value, target, usual);
  const words = `${SIDE_SAID[side]} ${sayNumber(limit, decimals)}`;
  return by > 0 ? `${sayNumber(by, decimals)} ${words}` : `just ${words}`;
}

/** "65", "5.1 kPa". */
export function showWatchedNumber(code: WatchedCode, value: number, usual: UsualUnits): string {
  const { scale, decimals, unit } = usualOf(code, usual);
  const number = showNumber(scale(value), decimals);
  return unit === undefined ? number : `${number} ${showUnit(unit)}`;
}

/** "25 under target 90", "just over target 45". */
export function showBeyond(code: WatchedCode, value: number, target: number, side: Side, usual: UsualUnits): string {
  const { by, limit, decimals } = compare(code, value, target, usual);
  const words = `${side} target ${showNumber(limit, decimals)}`;
  return by > 0 ? `${showNumber(by, decimals)} ${words}` : `just ${words}`;
}
