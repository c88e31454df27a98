import { fromCanonical } from "../../core/convert.ts";
import { showAmount, showExactly, showNumber } from "../../core/shownNumber.ts";
import { VITALS, type UcumUnit, type VitalCode } from "../../core/vitals.ts";
import type { Strength } from "../../core/concentration.ts";
import type { SaidAmount, SaidRate } from "../../log/careFacts.ts";
import type { FindingValue, VitalValue } from "../../log/facts.ts";
import { findMedicine } from "../../protocol/findMedicine.ts";
import type { Protocol } from "../../protocol/protocol.ts";

/** Stands on every page of a case without a patient. */
export const REHEARSAL = "REHEARSAL: no patient";

/** Stands beside what the device could not write yet. */
export const NOT_SAVED = "NOT SAVED";

/** A stored unit as it is printed. */
const UNITS: Readonly<Record<UcumUnit, string>> = {
  "mm[Hg]": "mmHg",
  "/min": "/min",
  "%": "%",
  Cel: "°C",
  "mmol/L": "mmol/L",
  "{score}": "",
  mm: "mm",
  kg: "kg",
  cm: "cm",
  a: "years",
};

/** An age over this is never in the record: 90 stands for all of them. */
const OLDEST_KNOWN_A = 89;

const joined = (...parts: readonly (string | undefined)[]): string =>
  parts.filter((part) => part !== undefined && part !== "").join(" ");

/** The unit of the region for this vital, where that is not the stored one. */
function regionUnit(code: VitalCode, { co2, glucose }: Protocol["region"]): "kPa" | "mg/dL" | undefined {
  if (code === "etco2" && co2 === "kPa") return co2;
  return code === "glucose" && glucose === "mg/dL" ? glucose : undefined;
}

/** A stored value in the unit of the region. */
export function inRegion(code: VitalCode, value: number, region: Protocol["region"]) {
  const unit = regionUnit(code, region);
  const converted = unit && fromCanonical(code, value, unit);
  return unit === undefined || converted?.ok !== true
    ? { value, unit: UNITS[VITALS[code].unit], decimals: VITALS[code].decimals }
    : { value: converted.value, unit, decimals: unit === "kPa" ? (1 as const) : (0 as const) };
}

function showAgeA({ value, said }: Pick<VitalValue, "value" | "said">): string {
  if (value > OLDEST_KNOWN_A) return `over ${OLDEST_KNOWN_A} years`;
  return said.unit === "mo" ? `${showAmount(said.value)} months` : `${showNumber(value, 0)} years`;
}

/** A recorded value with all that was said of it: "SBP 110 mmHg, cuff, left arm", "Weight 80.0 kg, estimated". */
export function showVital(v: VitalValue, { region }: Protocol): string {
  const { value, unit, decimals } = inRegion(v.code, v.value, region);
  const shown = v.code === "age" ? showAgeA(v) : joined(showNumber(value, decimals), unit);
  const how = [v.method, v.site, v.level && `zeroed at the ${v.level}`, v.reaction].filter(
    (part) => part !== undefined,
  );
  return [`${VITALS[v.code].label} ${shown}`, ...how].join(", ");
}

export const showFinding = ({ code, finding }: FindingValue): string =>
  `${VITALS[code].label} ${finding.replace("-", " ")}`;

/** Micrograms in full: its short form is read as milligrams. */
const showUnit = (unit: string): string => unit.replace("mcg", "micrograms");
export const showDose = ({ value, unit }: SaidAmount | SaidRate): string => `${showExactly(value)} ${showUnit(unit)}`;
export const showMl = (ml: number): string => `${showExactly(ml)} mL`;
export const showStrength = ({ amount, unit, volumeMl }: Strength): string =>
  `${showDose({ value: amount, unit })} in ${showMl(volumeMl)}`;

/** A drug by its name in the protocol; one that it does not have by its id. */
export const drugName = (protocol: Protocol, id: string): string => findMedicine(protocol, id)?.name ?? id;
export const fluidName = ({ fluids }: Protocol, id: string): string =>
  fluids.find((fluid) => fluid.id === id)?.label ?? id;

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
