import type { Derivation, DerivationInput } from "../../core/derivation.ts";
import type { Explanation } from "../../log/why/explanation.ts";
import { sayDoseUnit } from "./doseUnit.ts";
import { roundedDose, sayNumber } from "./number.ts";
import { saySource } from "./source.ts";
import { sentences } from "./sentence.ts";
import { sayAge } from "./vital.ts";

/** How units other than those of doses are said. Those in which a vital is stored are understood. */
const UNITS_SAID: Readonly<Record<string, string>> = {
  mmHg: "",
  "%": "",
  "": "",
  kg: "kilos",
  cm: "centimetres",
  years: "years",
  "/min": "",
  "°C": "",
  "mmol/L": "",
  kPa: "kilopascals",
  "mg/dL": "milligrams per decilitre",
};

const NAMES_SAID: Readonly<Record<string, string>> = {
  SBP: "systolic",
  DBP: "diastolic",
  SpO2: "sats",
  HR: "heart rate",
  RR: "breaths",
  EtCO2: "end tidal",
  Temp: "temperature",
  Glucose: "glucose",
};

const WHOLE: readonly string[] = ["mmHg", "%", "/min", "cm", "years", "mg/dL"];
const ONE_DECIMAL: readonly string[] = ["kg", "kPa", "°C", "mmol/L"];

/** Pressures and rates are spoken whole; weights, temperatures and the like with one decimal; doses with three figures. */
function sayRounded(value: number, unit: string): string {
  if (WHOLE.includes(unit)) return sayNumber(value, 0);
  return ONE_DECIMAL.includes(unit) ? sayNumber(value, 1) : sayNumber(roundedDose(value), 2);
}

const joined = (...parts: readonly (string | undefined)[]): string => parts.filter(Boolean).join(", ");
const spaced = (...parts: readonly string[]): string => parts.filter((p) => p !== "").join(" ");

type Named = Pick<DerivationInput, "name" | "value" | "unit">;

const sayAmount = ({ name, value, unit }: Named): string =>
  spaced(NAMES_SAID[name] ?? name, sayRounded(value, unit), UNITS_SAID[unit] ?? sayDoseUnit(unit));

/** What was measured or comes from the protocol goes without saying; what was not is said. */
const sayInput = (input: DerivationInput): string =>
  input.kind === "assumed" || input.kind === "estimated" ? `${sayAmount(input)}, ${input.kind}` : sayAmount(input);

const leaves = ({ inputs, parts }: Derivation): readonly DerivationInput[] => [...inputs, ...parts.flatMap(leaves)];

/** The age of the oldest value that went in; nothing for values just said. */
function sayOldest(inputs: readonly DerivationInput[], nowMs: number): string | undefined {
  const times = inputs.flatMap(({ atMs }) => (atMs === undefined ? [] : [atMs]));
  const age = times.length === 0 ? "now" : sayAge(nowMs - Math.min(...times));
  return age === "now" ? undefined : `${age} old`;
}

const sayWithSource = (input: DerivationInput | undefined): string | undefined =>
  input && joined(sayAmount(input), input.source && saySource(input.source));

/** What the result rests on in the protocol: its target, else the entry it was worked out from. */
function sayProtocolEntry({ against, inputs }: Derivation): string | undefined {
  if (against !== undefined) return sayWithSource(against);
  const source = inputs.find(({ kind }) => kind === "protocol")?.source;
  return source && `protocol, ${saySource(source)}`;
}

/** "MAP seventy seven from systolic one ten and diastolic sixty". */
const sayFrom = ({ result, inputs }: Derivation): string =>
  `${sayAmount(result)} from ${inputs.map(sayInput).join(" and ")}`;

/** Where an input was worked out in its turn, how: the last of them, which changed the result most; else the rule. */
function sayRule({ formula, parts }: Derivation): string | undefined {
  const part = parts.at(-1);
  const isCommon = formula.source.kind === "common-practice";
  if (part === undefined) return isCommon ? undefined : joined(formula.name, saySource(formula.source));
  return joined(sayFrom(part), part.against && sayAmount(part.against));
}

/**
 * Why a number is what it is, in at most three short sentences: what it was made from, the target it is held against or
 * the entry it follows and where that stands written, and the rule. The screen shows the same whole (`showWhy`).
 */
export function sayWhy(explanation: Explanation, nowMs: number): string {
  if (explanation.kind === "measured") {
    const { input, against } = explanation;
    return sentences(joined(`${sayAmount(input)}, measured`, sayOldest([input], nowMs)), sayWithSource(against));
  }
  const { derivation } = explanation;
  return sentences(
    joined(sayFrom(derivation), sayOldest(leaves(derivation), nowMs)),
    sayProtocolEntry(derivation),
    sayRule(derivation),
  );
}
