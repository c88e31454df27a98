import * as v from "valibot";
import { DOSE_UNITS, RATE_UNITS, WEIGHT_SCALARS } from "../../core/doseUnits.ts";
import { SOURCE_KINDS } from "../../core/derivation.ts";
import { VITALS, type VitalCode } from "../../core/vitals.ts";
import { PHASES } from "../phases.ts";

export const text = v.pipe(v.string(), v.trim(), v.nonEmpty("must not be empty"));
export const number = v.pipe(v.number(), v.finite());
export const notNegative = v.pipe(number, v.minValue(0, "must not be negative"));
export const positive = v.pipe(number, v.gtValue(0, "must be above 0"));
export const count = v.pipe(number, v.integer(), v.minValue(1, "must be 1 or more"));

export const phase = v.picklist(PHASES);
export const priority = v.picklist(["high", "medium", "low"]);
export const vitalCode = v.picklist(Object.keys(VITALS) as [VitalCode, ...VitalCode[]]);
export const doseUnit = v.picklist(DOSE_UNITS);
export const rateUnit = v.picklist(RATE_UNITS);
export const weightScalar = v.picklist(WEIGHT_SCALARS);
export const region = v.picklist(["international", "us"]);

/** What a value rests on. */
export const source = v.strictObject({
  reference: text,
  kind: v.picklist(SOURCE_KINDS),
  primaryRead: v.boolean(),
});

/** Where sources disagree: what else could stand here, and why this does. */
export const choice = v.strictObject({
  instead: v.pipe(v.array(text), v.nonEmpty("names no alternative")),
  reason: text,
});

/** A value with where it comes from. */
export const sourced = <S extends v.GenericSchema>(value: S) =>
  v.strictObject({ value, source, choice: v.exactOptional(choice) });

export const range = v.strictObject({ low: number, high: number });

/** A number, or one that grows with age: base + perYear × age in years. */
export const byAge = v.union([number, v.strictObject({ base: number, perYear: number })]);
