import type { Limits } from "./quantity.ts";

/** Every vital sign and body measure that a fact can hold. One stored unit each. */
export type VitalCode =
  | "sbp"
  | "dbp"
  | "map"
  | "hr"
  | "rr"
  | "spo2"
  | "etco2"
  | "icp"
  | "temp"
  | "glucose"
  | "gcsEye"
  | "gcsVerbal"
  | "gcsMotor"
  | "pupilLeft"
  | "pupilRight"
  | "weight"
  | "height"
  | "age";

export type UcumUnit = "mm[Hg]" | "/min" | "%" | "Cel" | "mmol/L" | "{score}" | "mm" | "kg" | "cm" | "a";

export type VitalInfo = {
  /** Canonical unit of the stored value, UCUM code. */
  readonly unit: UcumUnit;
  /** Printed and spoken decimals. */
  readonly decimals: 0 | 1;
  /** Inclusive entry limits in the canonical unit: this project's check against mishearing, not a clinical claim. */
  readonly limits: Limits;
  /** Short label for the screen, e.g. "MAP". */
  readonly label: string;
  /** What is said aloud, e.g. "MAP", "end tidal". */
  readonly spokenName: string;
};

/**
 * The one table of vitals; everything else reads it. Entry limits: this project's own choice, no source. They reach from
 * small children to the dying, with two exceptions. A diastolic in the teens sounds like a far likelier one (sixteen,
 * sixty) and is asked about; the mean beside it can still be recorded. A glucose under 1.0 is about where meters stop
 * giving numbers, and admitting it would leave a bare "twelve" open between mmol/L and mg/dL.
 */
const TABLE = {
  sbp: { unit: "mm[Hg]", decimals: 0, limits: { min: 30, max: 300 }, label: "SBP", spokenName: "systolic" },
  dbp: { unit: "mm[Hg]", decimals: 0, limits: { min: 20, max: 200 }, label: "DBP", spokenName: "diastolic" },
  map: { unit: "mm[Hg]", decimals: 0, limits: { min: 20, max: 250 }, label: "MAP", spokenName: "MAP" },
  hr: { unit: "/min", decimals: 0, limits: { min: 20, max: 260 }, label: "HR", spokenName: "heart rate" },
  rr: { unit: "/min", decimals: 0, limits: { min: 2, max: 80 }, label: "RR", spokenName: "breaths" },
  spo2: { unit: "%", decimals: 0, limits: { min: 40, max: 100 }, label: "SpO2", spokenName: "sats" },
  etco2: { unit: "mm[Hg]", decimals: 0, limits: { min: 5, max: 120 }, label: "EtCO2", spokenName: "end tidal" },
  icp: { unit: "mm[Hg]", decimals: 0, limits: { min: 0, max: 100 }, label: "ICP", spokenName: "ICP" },
  temp: { unit: "Cel", decimals: 1, limits: { min: 25, max: 43 }, label: "Temp", spokenName: "temperature" },
  glucose: { unit: "mmol/L", decimals: 1, limits: { min: 1, max: 50 }, label: "Glucose", spokenName: "glucose" },
  gcsEye: { unit: "{score}", decimals: 0, limits: { min: 1, max: 4 }, label: "GCS eye", spokenName: "eyes" },
  gcsVerbal: { unit: "{score}", decimals: 0, limits: { min: 1, max: 5 }, label: "GCS verbal", spokenName: "verbal" },
  gcsMotor: { unit: "{score}", decimals: 0, limits: { min: 1, max: 6 }, label: "GCS motor", spokenName: "motor" },
  pupilLeft: { unit: "mm", decimals: 0, limits: { min: 1, max: 9 }, label: "Left pupil", spokenName: "left pupil" },
  pupilRight: { unit: "mm", decimals: 0, limits: { min: 1, max: 9 }, label: "Right pupil", spokenName: "right pupil" },
  weight: { unit: "kg", decimals: 1, limits: { min: 2, max: 300 }, label: "Weight", spokenName: "weight" },
  height: { unit: "cm", decimals: 0, limits: { min: 40, max: 230 }, label: "Height", spokenName: "height" },
  age: { unit: "a", decimals: 0, limits: { min: 0, max: 110 }, label: "Age", spokenName: "age" },
} as const satisfies Readonly<Record<VitalCode, VitalInfo>>;

export const VITALS: Readonly<Record<VitalCode, VitalInfo>> = TABLE;

/** The stored unit of one vital, known to the compiler. */
export type StoredUnit<C extends VitalCode> = (typeof TABLE)[C]["unit"];

/** From the lowest to the highest value that any vital stored in this unit may have. */
export function spanOf(unit: UcumUnit): Limits {
  const limits = Object.values(VITALS).flatMap((vital) => (vital.unit === unit ? [vital.limits] : []));
  return { min: Math.min(...limits.map(({ min }) => min)), max: Math.max(...limits.map(({ max }) => max)) };
}
