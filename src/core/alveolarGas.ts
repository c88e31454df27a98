import type { PaCo2 } from "./carbonDioxide.ts";
import { quantityOf, type Fraction, type MmHg } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";

/** Oxygen in the breathed gas, from air to pure oxygen: 0.5, never 50. The limits are this project's entry check. */
export const inspiredFraction = quantityOf<"fraction">({ min: 0.21, max: 1 });

/** Air pressure, from the highest summit to below sea level. The limits are this project's entry check. */
export const barometricMmHg = quantityOf<"mmHg">({ min: 250, max: 820 });

export type BreathedGas = {
  readonly fio2: Fraction;
  readonly barometricMmHg: MmHg;
  readonly paco2MmHg: PaCo2;
};

/** The three numbers cannot all be true of a steady state: so much CO2 would leave no room for oxygen. */
export type AlveolarError = { readonly kind: "no-oxygen-left" };

/** Pressure of water vapour at 37 °C. */
const WATER_MMHG = 47;
/** CO2 given off for each oxygen taken up; an ordinary mixed diet. */
const EXCHANGE_RATIO = 0.8;

// A floor of zero would be a number nobody measured or computed, so what cannot be is refused.
const possible = (mmHg: number): Result<MmHg, AlveolarError> =>
  mmHg > 0 ? ok(mmHg as MmHg) : fail({ kind: "no-oxygen-left" });

/**
 * Alveolar oxygen pressure, full form.
 *
 * @param gas inspired oxygen as a fraction; barometric pressure, mmHg; arterial CO2 pressure, mmHg.
 * @returns   FiO2 × (PB − 47) − PaCO2 × [FiO2 + (1 − FiO2) / 0.8], mmHg, unrounded.
 *
 * Errors: `no-oxygen-left` where that is zero or less.
 * Not for: a patient who is not breathing steadily; an end-tidal CO2 in place of an arterial one.
 * Source: standard form, from memory; 47 mmHg of water at 37 °C, exchange ratio assumed 0.8.
 */
export function alveolarOxygen({ fio2, barometricMmHg: pb, paco2MmHg }: BreathedGas): Result<MmHg, AlveolarError> {
  return possible(fio2 * (pb - WATER_MMHG) - paco2MmHg * (fio2 + (1 - fio2) / EXCHANGE_RATIO));
}

/**
 * Alveolar oxygen pressure, short form: for comparison with numbers worked out at the bedside.
 *
 * @param gas as for `alveolarOxygen`.
 * @returns   FiO2 × (PB − 47) − PaCO2 / 0.8, mmHg, unrounded. Never above the full form; 10 mmHg below it in pure oxygen
 *            at a PaCO2 of 40.
 *
 * Errors: `no-oxygen-left` where that is zero or less.
 * Not for: anything the full form can answer.
 * Source: standard form, from memory; constants as for `alveolarOxygen`.
 */
export function shortAlveolarOxygen({ fio2, barometricMmHg: pb, paco2MmHg }: BreathedGas): Result<MmHg, AlveolarError> {
  return possible(fio2 * (pb - WATER_MMHG) - paco2MmHg / EXCHANGE_RATIO);
}
