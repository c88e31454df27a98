/** Units in which a drug is ordered, labelled and read back. "units" are those of activity, never abbreviated. */
export const DOSE_UNITS = ["mcg", "mg", "g", "units", "mmol", "mL"] as const;
export type DoseUnit = (typeof DOSE_UNITS)[number];

/** Units in which an infusion is ordered or a pump is set. */
export const RATE_UNITS = [
  "mcg/kg/min",
  "mcg/min",
  "mcg/kg/h",
  "mg/kg/h",
  "mg/min",
  "mg/h",
  "g/h",
  "units/min",
  "units/h",
  "mL/kg/h",
  "mL/h",
] as const;
export type RateUnit = (typeof RATE_UNITS)[number];

/** Which weight a dose is worked out from. */
export const WEIGHT_SCALARS = ["actual", "ideal", "lean", "adjusted"] as const;
export type WeightScalar = (typeof WEIGHT_SCALARS)[number];
