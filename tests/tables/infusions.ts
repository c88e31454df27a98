import type { Strength } from "../../src/core/concentration.ts";
import type { RateUnit } from "../../src/core/doseUnits.ts";
import type { PublishedRow, RowSource } from "./row.ts";

const byHand = (locator: string): RowSource => ({ reference: "arithmetic", locator, read: "by hand" });

type Running = { value: number; unit: RateUnit; kg?: number; strength?: Strength };
const in250: Strength = { amount: 4, unit: "mg", volumeMl: 250 };
const in50: Strength = { amount: 4, unit: "mg", volumeMl: 50 };
const each = (amount: number, unit: Strength["unit"]): Strength => ({ amount, unit, volumeMl: 1 });

const row = (given: Running, expected: number, decimals: number, locator: string): PublishedRow<Running> => ({
  given,
  expected,
  decimals,
  source: byHand(locator),
});

/** mL/h for a rate ordered. */
export const PUMP_ROWS: readonly PublishedRow<Running>[] = [
  row({ value: 0.1, unit: "mcg/kg/min", kg: 80, strength: in250 }, 30.0, 1, "noradrenaline 0.1 × 80 × 60 / 16"),
  row({ value: 0.1, unit: "mcg/kg/min", kg: 80, strength: in50 }, 6.0, 1, "noradrenaline 0.1 × 80 × 60 / 80"),
  row({ value: 0.05, unit: "mcg/kg/min", kg: 70, strength: in250 }, 13.125, 3, "noradrenaline 0.05 × 70 × 60 / 16"),
  row({ value: 10, unit: "mcg/min", strength: in250 }, 37.5, 1, "noradrenaline 10 × 60 / 16"),
  row({ value: 50, unit: "mcg/min", strength: each(100, "mcg") }, 30.0, 1, "phenylephrine 50 × 60 / 100"),
  row({ value: 50, unit: "mcg/min", strength: each(20, "mcg") }, 150.0, 1, "phenylephrine 50 × 60 / 20"),
  row(
    { value: 0.05, unit: "mcg/kg/min", kg: 80, strength: { amount: 1, unit: "mg", volumeMl: 250 } },
    60.0,
    1,
    "adrenaline 0.05 × 80 × 60 / 4",
  ),
  row(
    { value: 0.03, unit: "units/min", strength: { amount: 20, unit: "units", volumeMl: 100 } },
    9.0,
    1,
    "vasopressin 0.03 × 60 / 0.2",
  ),
  row({ value: 20, unit: "mcg/kg/min", kg: 80, strength: each(10, "mg") }, 9.6, 1, "propofol 96 mg/h / 10"),
  row({ value: 0.05, unit: "mg/kg/h", kg: 80, strength: each(1, "mg") }, 4, 0, "midazolam 0.05 × 80 / 1"),
  row({ value: 1, unit: "mg/kg/h", kg: 80, strength: each(10, "mg") }, 8, 0, "ketamine 1 × 80 / 10"),
  row({ value: 1, unit: "mcg/kg/h", kg: 80, strength: each(10, "mcg") }, 8, 0, "fentanyl 1 × 80 / 10"),
  row({ value: 2, unit: "mg/kg/h", kg: 15, strength: each(100, "mg") }, 0.3, 1, "tranexamic acid, child, 2 × 15 / 100"),
  row({ value: 240, unit: "mg/h", strength: each(10, "mg") }, 24, 0, "andexanet alfa 480 mg over 2 h at 10 mg/mL"),
  row({ value: 1.6, unit: "mg/min", strength: each(10, "mg") }, 9.6, 1, "propofol 1.6 × 60 / 10"),
  row(
    { value: 0.125, unit: "g/h", strength: { amount: 1, unit: "g", volumeMl: 500 } },
    62.5,
    1,
    "1 g in 500 mL over 8 h",
  ),
  row({ value: 1.8, unit: "units/h", strength: { amount: 20, unit: "units", volumeMl: 100 } }, 9.0, 1, "1.8 / 0.2"),
  row({ value: 3, unit: "mL/kg/h", kg: 20 }, 60, 0, "3 × 20"),
  row({ value: 125, unit: "mL/h" }, 125, 0, "as ordered"),
];

/** The rate, in `unit`, that a pump at `value` mL/h gives. */
export const REVERSE_ROWS: readonly PublishedRow<Running>[] = [
  row({ value: 22.5, unit: "mcg/kg/min", kg: 75, strength: in250 }, 0.08, 2, "22.5 × 16 / 60 / 75"),
  row({ value: 30, unit: "mcg/min", strength: in250 }, 8, 0, "30 × 16 / 60"),
  row({ value: 9.6, unit: "mg/kg/h", kg: 80, strength: each(10, "mg") }, 1.2, 1, "9.6 × 10 / 80"),
  row({ value: 9.6, unit: "mg/h", strength: each(10, "mg") }, 96, 0, "9.6 × 10"),
];

/** mL/h for a volume in a time. */
export const RATE_OVER_ROWS: readonly PublishedRow<{ volumeMl: number; minutes: number }>[] = [
  {
    given: { volumeMl: 100, minutes: 10 },
    expected: 600,
    decimals: 0,
    source: byHand("tranexamic acid 1 g in 100 mL over 10 min"),
  },
  {
    given: { volumeMl: 500, minutes: 480 },
    expected: 62.5,
    decimals: 1,
    source: byHand("tranexamic acid 1 g in 500 mL over 8 h"),
  },
];

/** Minutes until empty. */
export const EMPTY_ROWS: readonly PublishedRow<{ remainingMl: number; mlPerH: number }>[] = [
  { given: { remainingMl: 100, mlPerH: 600 }, expected: 10, decimals: 0, source: byHand("100 / 600 h") },
  { given: { remainingMl: 500, mlPerH: 62.5 }, expected: 480, decimals: 0, source: byHand("500 / 62.5 h") },
  { given: { remainingMl: 210, mlPerH: 30 }, expected: 420, decimals: 0, source: byHand("210 / 30 h") },
];
