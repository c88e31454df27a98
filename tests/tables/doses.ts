import type { DoseOrder } from "../../src/core/dosePlan.ts";
import type { Strength } from "../../src/core/concentration.ts";
import type { PublishedRow, RowSource } from "./row.ts";

const byHand = (locator: string): RowSource => ({ reference: "arithmetic", locator, read: "by hand" });

const order = (unit: DoseOrder["unit"], usual: number, cap?: number): DoseOrder => ({
  per: "kg",
  unit,
  low: usual,
  usual,
  high: usual,
  ...(cap !== undefined && { cap }),
});

/** The usual dose, in the unit of the order. */
export const DOSE_ROWS: readonly PublishedRow<{ order: DoseOrder; kg: number; shocked?: boolean }>[] = [
  { given: { order: order("mg", 1.5), kg: 80 }, expected: 120, decimals: 0, source: byHand("ketamine 1.5 × 80") },
  {
    given: { order: { ...order("mg", 1.5), shock: { low: 0.5, usual: 0.75, high: 1 } }, kg: 80, shocked: true },
    expected: 60,
    decimals: 0,
    source: byHand("ketamine in shock, 0.75 × 80"),
  },
  { given: { order: order("mg", 0.3), kg: 80 }, expected: 24, decimals: 0, source: byHand("etomidate 0.3 × 80") },
  {
    given: { order: order("mg", 1.2), kg: 73.3 },
    expected: 87.96,
    decimals: 2,
    source: byHand("rocuronium 1.2 × 73.3"),
  },
  { given: { order: order("mg", 1.5), kg: 80 }, expected: 120, decimals: 0, source: byHand("suxamethonium 1.5 × 80") },
  { given: { order: order("mcg", 2), kg: 80 }, expected: 160, decimals: 0, source: byHand("fentanyl 2 × 80") },
  { given: { order: order("mg", 1.5), kg: 25 }, expected: 37.5, decimals: 1, source: byHand("ketamine 1.5 × 25") },
  { given: { order: order("mg", 1.2), kg: 25 }, expected: 30, decimals: 0, source: byHand("rocuronium 1.2 × 25") },
  {
    given: { order: order("mg", 60, 4500), kg: 80 },
    expected: 4500,
    decimals: 0,
    source: byHand("levetiracetam 60 × 80 = 4800, capped"),
  },
  {
    given: { order: order("units", 25, 2500), kg: 120 },
    expected: 2500,
    decimals: 0,
    source: byHand("four-factor concentrate 25 × 100, the cap at 100 kg"),
  },
  {
    given: { order: order("units", 35, 3500), kg: 120 },
    expected: 3500,
    decimals: 0,
    source: byHand("four-factor concentrate 35 × 100, the cap at 100 kg"),
  },
  {
    given: { order: order("units", 50, 5000), kg: 120 },
    expected: 5000,
    decimals: 0,
    source: byHand("four-factor concentrate 50 × 100, the cap at 100 kg"),
  },
  {
    given: { order: order("units", 35, 3500), kg: 99 },
    expected: 3465,
    decimals: 0,
    source: byHand("four-factor concentrate 35 × 99, under the cap"),
  },
  { given: { order: order("g", 0.5), kg: 80 }, expected: 40, decimals: 0, source: byHand("mannitol 0.5 × 80") },
];

type Dose = { readonly value: number; readonly unit: DoseOrder["unit"] };
const each = (amount: number, unit: Strength["unit"]): Strength => ({ amount, unit, volumeMl: 1 });

/** mL that hold a dose. */
export const VOLUME_ROWS: readonly PublishedRow<{ dose: Dose; strength: Strength }>[] = [
  {
    given: { dose: { value: 120, unit: "mg" }, strength: each(50, "mg") },
    expected: 2.4,
    decimals: 1,
    source: byHand("ketamine 120 / 50"),
  },
  {
    given: { dose: { value: 120, unit: "mg" }, strength: each(10, "mg") },
    expected: 12,
    decimals: 0,
    source: byHand("ketamine 120 / 10"),
  },
  {
    given: { dose: { value: 60, unit: "mg" }, strength: each(50, "mg") },
    expected: 1.2,
    decimals: 1,
    source: byHand("ketamine in shock, 60 / 50"),
  },
  {
    given: { dose: { value: 24, unit: "mg" }, strength: each(2, "mg") },
    expected: 12,
    decimals: 0,
    source: byHand("etomidate 24 / 2"),
  },
  {
    given: { dose: { value: 87.96, unit: "mg" }, strength: each(10, "mg") },
    expected: 8.8,
    decimals: 1,
    source: byHand("rocuronium 87.96 / 10"),
  },
  {
    given: { dose: { value: 120, unit: "mg" }, strength: each(20, "mg") },
    expected: 6,
    decimals: 0,
    source: byHand("suxamethonium 120 / 20"),
  },
  {
    given: { dose: { value: 160, unit: "mcg" }, strength: each(50, "mcg") },
    expected: 3.2,
    decimals: 1,
    source: byHand("fentanyl 160 / 50"),
  },
  {
    given: { dose: { value: 37.5, unit: "mg" }, strength: each(10, "mg") },
    expected: 3.75,
    decimals: 2,
    source: byHand("ketamine 37.5 / 10"),
  },
  {
    given: { dose: { value: 30, unit: "mg" }, strength: each(10, "mg") },
    expected: 3,
    decimals: 0,
    source: byHand("rocuronium 30 / 10"),
  },
  {
    given: { dose: { value: 15, unit: "mcg" }, strength: each(10, "mcg") },
    expected: 1.5,
    decimals: 1,
    source: byHand("adrenaline 15 / 10"),
  },
  {
    given: { dose: { value: 100, unit: "mcg" }, strength: { amount: 10, unit: "mg", volumeMl: 100 } },
    expected: 1.0,
    decimals: 1,
    source: byHand("phenylephrine 100 / 100, from 10 mg in 100 mL"),
  },
  {
    given: { dose: { value: 4500, unit: "mg" }, strength: each(100, "mg") },
    expected: 45,
    decimals: 0,
    source: byHand("levetiracetam 4500 / 100"),
  },
  {
    given: { dose: { value: 1, unit: "g" }, strength: { amount: 10, unit: "g", volumeMl: 100 } },
    expected: 10,
    decimals: 0,
    source: byHand("calcium chloride 1 g of 10 g in 100 mL"),
  },
  {
    given: { dose: { value: 3, unit: "g" }, strength: { amount: 10, unit: "g", volumeMl: 100 } },
    expected: 30,
    decimals: 0,
    source: byHand("calcium gluconate 3 g of 10 g in 100 mL"),
  },
  {
    given: { dose: { value: 40, unit: "g" }, strength: { amount: 20, unit: "g", volumeMl: 100 } },
    expected: 200,
    decimals: 0,
    source: byHand("mannitol 40 g of 20 g in 100 mL"),
  },
];
