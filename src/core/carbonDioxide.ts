import { quantityOf, type MmHg, type QuantityError } from "./quantity.ts";
import { ok, type Result } from "./result.ts";

declare const arterial: unique symbol;

/** A pressure of CO2 in arterial blood. An end-tidal one is a plain `MmHg` and does not fit in its place. */
export type PaCo2 = MmHg & { readonly [arterial]: true };

/** An arterial CO2 that remembers whether a blood gas gave it. */
export type ArterialCo2<Kind extends "measured" | "estimated" = "measured" | "estimated"> = {
  readonly kind: Kind;
  readonly paco2MmHg: PaCo2;
};

export type Co2Gap = {
  /** PaCO2 − EtCO2; negative when `reversed`. */
  readonly gapMmHg: MmHg;
  /** EtCO2 above PaCO2: it happens, but more often the two do not belong together. To be said, not hidden. */
  readonly reversed: boolean;
};

const enteredMmHg = quantityOf<"mmHg">({ min: 5, max: 200 });

/**
 * The one door to an arterial CO2 pressure.
 *
 * @param n mmHg, from a blood gas or from a target for one.
 * @returns the pressure, mmHg; or `not-a-number`, or `out-of-range` outside 5 to 200.
 *
 * Not for: an end-tidal value; see `paco2FromEtco2`.
 * Source: the limits are this project's check against mishearing.
 */
export const paco2 = (n: number): Result<PaCo2, QuantityError> => enteredMmHg(n) as Result<PaCo2, QuantityError>;

/**
 * How far the end-tidal CO2 stands below the arterial one.
 *
 * @param paco2MmHg measured in a blood gas, mmHg.
 * @param etco2MmHg read when that gas was drawn, mmHg.
 * @returns         PaCO2 − EtCO2, mmHg, unrounded, and whether it is reversed. The caller keeps the time of the gas: a gap ages.
 *
 * Not for: a gap of other patients. Medians of 6 and 15 mmHg and a mean of 12 are published, each with a wide spread.
 * Source: definition. Spread: Doppmann P et al. Sci Rep 2021, doi:10.1038/s41598-021-89913-x; Sardesai N et al. PLoS One
 * 2024, doi:10.1371/journal.pone.0297113; PaCO2-EtCO2 gradient at one UK helicopter service, 2015-2018.
 */
export function co2Gap(paco2MmHg: PaCo2, etco2MmHg: MmHg): Co2Gap {
  const gap = paco2MmHg - etco2MmHg;
  return { gapMmHg: gap as MmHg, reversed: gap < 0 };
}

/**
 * Arterial CO2 that an end-tidal reading, or an end-tidal target, stands for while a known gap holds.
 *
 * @param etco2MmHg end-tidal, mmHg.
 * @param gap       this patient's, from a blood gas.
 * @returns         EtCO2 + gap, mmHg, unrounded, always called estimated.
 *
 * Errors: `out-of-range` where the sum is no possible arterial pressure (the limits of `paco2`).
 * Not for: shock or a falling mean pressure. Output falls, the gap widens, and a low EtCO2 then goes with a high PaCO2.
 * Source: algebra of gap = PaCO2 − EtCO2.
 */
export function paco2FromEtco2(etco2MmHg: MmHg, gap: Co2Gap): Result<ArterialCo2<"estimated">, QuantityError> {
  const sum = paco2(etco2MmHg + gap.gapMmHg);
  return sum.ok ? ok({ kind: "estimated", paco2MmHg: sum.value }) : sum;
}
