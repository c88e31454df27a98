/** Why a measure has no value. A missing value is never a number. */
export type WhyUnknown =
  | "no-attempt"
  | "attempt-not-ended"
  | "start-not-called"
  | "tube-not-proved"
  | "no-induction"
  | "not-measured"
  | "not-measured-since-induction"
  | "no-two-readings-near"
  | "no-sedation"
  | "list-not-used"
  | "no-age"
  | "not-adult"
  | "no-pressure-before"
  | "low-before"
  | "times-out-of-order";

/** A measure of a case: a value, or why there is none. */
export type Measured<T> = { readonly value: T } | { readonly unknown: WhyUnknown };

export const known = <T>(value: T): Measured<T> => ({ value });
export const unknown = (why: WhyUnknown): Measured<never> => ({ unknown: why });

/** The value where there is one. */
export const valueIn = <T>(measured: Measured<T>): T | undefined => ("value" in measured ? measured.value : undefined);

/** Each reason as it is printed. */
export const WHY_UNKNOWN: Readonly<Record<WhyUnknown, string>> = {
  "no-attempt": "no attempt was called",
  "attempt-not-ended": "its end was not called",
  "start-not-called": "its start was not called",
  "tube-not-proved": "no tube was confirmed or gave CO2",
  "no-induction": "neither drugs of induction nor an attempt recorded",
  "not-measured": "not measured",
  "not-measured-since-induction": "saturation or systolic not measured since induction",
  "no-two-readings-near": "no two readings near enough to each other",
  "no-sedation": "no sedation recorded after the tube",
  "list-not-used": "the list was not used",
  "no-age": "the measure is of adults, and no age was recorded",
  "not-adult": "the measure is of adults",
  "no-pressure-before": "no systolic before the tube",
  "low-before": "systolic was low for long before the tube",
  "times-out-of-order": "times that are none or run backwards",
};
