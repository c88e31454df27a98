import type { ArterialCo2, PaCo2 } from "./carbonDioxide.ts";
import type { Ml, PerMin } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";

// A rate is worked out from arterial CO2 alone. An end-tidal value has to come through `paco2FromEtco2` with a known gap: in
// shock, or while the mean pressure falls, a low EtCO2 is low output until proved otherwise, and a rate that followed it
// down would leave a high PaCO2 unseen, to swell the brain.

export type RateProposal = {
  /** Estimated as soon as the CO2 was. */
  readonly kind: "computed" | "estimated";
  readonly perMin: PerMin;
  /** As a ventilator is set: the nearest whole breath, a half upward; 0 where one breath is too many. */
  readonly wholePerMin: PerMin;
};

export type Breathing = { readonly ratePerMin: PerMin; readonly tidalMl: Ml };

/** The breath is no larger than its dead space, or so little larger that no finite rate would do. */
export type RateError = { readonly kind: "no-alveolar-breath"; readonly volume: "present" | "new" };

const proposal = (perMin: number, { kind }: ArterialCo2): RateProposal => ({
  kind: kind === "measured" ? "computed" : kind,
  perMin: perMin as PerMin,
  wholePerMin: Math.round(perMin) as PerMin,
});

/**
 * The rate that would bring arterial CO2 to its target with the tidal volume left as it is.
 *
 * @param ratePerMin      present rate, breaths/min, long enough in force for CO2 to be steady.
 * @param now             arterial CO2, mmHg: a gas, or an estimate from EtCO2 and a known gap.
 * @param targetPaco2MmHg wanted arterial CO2, mmHg.
 * @returns               RR × PaCO2 / target, breaths/min, unrounded and in whole breaths.
 *
 * Not for: an EtCO2 without a known gap, which the types refuse; shock or a falling mean pressure, when no gap holds; limits
 * of the rate, which are the protocol's.
 * Source: proportionality at steady CO2 production and dead space, from memory.
 */
export const rateForCo2 = (ratePerMin: PerMin, now: ArterialCo2, targetPaco2MmHg: PaCo2): RateProposal =>
  proposal((ratePerMin * now.paco2MmHg) / targetPaco2MmHg, now);

/**
 * The rate that would bring arterial CO2 to its target when the tidal volume changes too.
 *
 * @param present         rate, breaths/min, and tidal volume, mL, long enough in force for CO2 to be steady.
 * @param newTidalMl      tidal volume from now on, mL.
 * @param deadSpaceMl     of either breath, mL.
 * @param now             arterial CO2, as for `rateForCo2`.
 * @param targetPaco2MmHg wanted arterial CO2, mmHg.
 * @returns               RR × (VT − VD) / (new VT − VD) × PaCO2 / target, breaths/min, unrounded and in whole breaths.
 *
 * Errors: `no-alveolar-breath` when the present or the new breath does not exceed the dead space.
 * Not for: what `rateForCo2` is not for.
 * Source: as `rateForCo2`, with alveolar in place of minute volume; from memory.
 */
export function rateForCo2AtVolume(
  present: Breathing,
  newTidalMl: Ml,
  deadSpaceMl: Ml,
  now: ArterialCo2,
  targetPaco2MmHg: PaCo2,
): Result<RateProposal, RateError> {
  const presentMl = present.tidalMl - deadSpaceMl;
  if (presentMl <= 0) return fail({ kind: "no-alveolar-breath", volume: "present" });
  const newMl = newTidalMl - deadSpaceMl;
  const perMin = (((present.ratePerMin * presentMl) / newMl) * now.paco2MmHg) / targetPaco2MmHg;
  if (newMl <= 0 || !Number.isFinite(perMin)) return fail({ kind: "no-alveolar-breath", volume: "new" });
  return ok(proposal(perMin, now));
}
