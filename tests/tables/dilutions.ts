import type { Strength } from "../../src/core/concentration.ts";
import type { PublishedRow, RowSource } from "./row.ts";

const byHand = (locator: string): RowSource => ({ reference: "arithmetic", locator, read: "by hand" });
const pushDosePage: RowSource = {
  reference: "Weingart SD. Open teaching page on bolus-dose vasopressors",
  locator: "mixing instructions for adrenaline",
  read: "primary",
};
const phenylephrineLabel = (locator: string): RowSource => ({
  reference: "FDA labels, phenylephrine hydrochloride injection, two versions",
  locator,
  read: "primary",
});
const noradrenalineLabel: RowSource = {
  reference: "FDA label, norepinephrine in sodium chloride 4 mg/250 mL",
  locator: "package panel",
  read: "primary",
};

const each = (amount: number, unit: Strength["unit"]): Strength => ({ amount, unit, volumeMl: 1 });

/** mcg or units in each mL. */
export const PER_ML_ROWS: readonly PublishedRow<{ strength: Strength; unit: Strength["unit"] }>[] = [
  {
    given: { strength: { amount: 4, unit: "mg", volumeMl: 250 }, unit: "mcg" },
    expected: 16,
    decimals: 0,
    source: noradrenalineLabel,
  },
  ...(
    [
      [8, 250, 32],
      [16, 250, 64],
      [4, 50, 80],
      [4, 1000, 4],
      [1, 250, 4],
      [10, 250, 40],
    ] as const
  ).map(([amount, volumeMl, expected]) => ({
    given: { strength: { amount, unit: "mg", volumeMl } as const, unit: "mcg" } as const,
    expected,
    decimals: 0,
    source: byHand(`${amount} mg in ${volumeMl} mL`),
  })),
  {
    given: { strength: { amount: 20, unit: "units", volumeMl: 100 }, unit: "units" },
    expected: 0.2,
    decimals: 1,
    source: byHand("20 units in 100 mL"),
  },
];

/** mcg in each mL of what was mixed. */
export const MIXED_ROWS: readonly PublishedRow<{ stock: Strength; takeMl: number; addMl: number }>[] = [
  { given: { stock: each(0.1, "mg"), takeMl: 1, addMl: 9 }, expected: 10, decimals: 0, source: pushDosePage },
  {
    given: { stock: each(1, "mg"), takeMl: 1, addMl: 99 },
    expected: 10,
    decimals: 0,
    source: byHand("1000 mcg in 100 mL"),
  },
  {
    given: { stock: each(1, "mg"), takeMl: 1, addMl: 9 },
    expected: 100,
    decimals: 0,
    source: byHand("1000 mcg in 10 mL: the ten-fold error"),
  },
  {
    given: { stock: each(1, "mg"), takeMl: 0.1, addMl: 9.9 },
    expected: 10,
    decimals: 0,
    source: byHand("100 mcg in 10 mL"),
  },
  {
    given: { stock: each(1, "mg"), takeMl: 1, addMl: 100 },
    expected: 9.9,
    decimals: 2,
    source: byHand("1000 / 101, an unopened bag"),
  },
  {
    given: { stock: each(10, "mg"), takeMl: 1, addMl: 99 },
    expected: 100,
    decimals: 0,
    source: phenylephrineLabel("10 mg (1 mL) and 99 mL"),
  },
  {
    given: { stock: each(10, "mg"), takeMl: 1, addMl: 500 },
    expected: 20,
    decimals: 0,
    source: phenylephrineLabel("10 mg (1 mL) and 500 mL"),
  },
];

/** mL of stock to take. */
export const TAKE_ROWS: readonly PublishedRow<{ stock: Strength; target: Strength; finalMl: number }>[] = [
  {
    given: { stock: each(0.1, "mg"), target: each(10, "mcg"), finalMl: 10 },
    expected: 1,
    decimals: 0,
    source: pushDosePage,
  },
  {
    given: { stock: each(1, "mg"), target: each(10, "mcg"), finalMl: 100 },
    expected: 1,
    decimals: 0,
    source: byHand("100 × 10 / 1000"),
  },
  {
    given: { stock: each(1, "mg"), target: each(10, "mcg"), finalMl: 10 },
    expected: 0.1,
    decimals: 1,
    source: byHand("10 × 10 / 1000"),
  },
  {
    given: { stock: each(10, "mg"), target: each(100, "mcg"), finalMl: 100 },
    expected: 1,
    decimals: 0,
    source: phenylephrineLabel("10 mg (1 mL) and 99 mL"),
  },
  {
    given: { stock: each(100, "mg"), target: each(50, "mg"), finalMl: 4 },
    expected: 2,
    decimals: 0,
    source: byHand("ketamine 100 mg/mL, one to one"),
  },
];
