import { quantityOf, type Fraction, type L, type LPerMin, type Minutes, type Quantity } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";

export type Bar = Quantity<"bar">;

/** Gauge pressure of a cylinder. The limits of these three are this project's entry check. */
export const bar = quantityOf<"bar">({ min: 0, max: 350 });
/** What a cylinder would hold of water, litres. */
export const waterVolumeL = quantityOf<"L">({ min: 0.1, max: 50 });
/** Gas as it comes out, at the pressure of the room, litres. */
export const freeGasL = quantityOf<"L">({ min: 0, max: 17_500 });

export type CylinderUse = {
  /** Free gas when the cylinder is full. */
  readonly fullL: L;
  /** Free gas in it now. */
  readonly contentsL: L;
  /** Part of a full cylinder that is never counted on. */
  readonly reserve: Fraction;
  readonly flowLPerMin: LPerMin;
};

export type Endurance = { readonly toReserve: Minutes; readonly toEmpty: Minutes };

/** Nothing flows, so there is no time to give. */
export type CylinderError = { readonly kind: "no-flow" };

/**
 * Free gas in a cylinder from its gauge.
 *
 * @param pressureBar gauge pressure, bar.
 * @param waterL      water volume, litres, as stamped on the cylinder.
 * @returns           pressure × water volume, litres, unrounded.
 *
 * Not for: liquid oxygen; nitrous oxide or CO2, which are liquid under pressure and whose gauge does not fall as they empty.
 * Source: Boyle's law, one bar taken as the pressure of the room; common practice, no source.
 */
export const freeGas = (pressureBar: Bar, waterL: L): L => (pressureBar * waterL) as L;

/**
 * How long a cylinder lasts.
 *
 * @param use full and present contents, litres of free gas; reserve as a fraction of full; flow, L/min.
 * @returns   (contents − reserve × full) / flow and contents / flow, minutes, unrounded. The first is 0 in the reserve.
 *
 * Errors: `no-flow` when the flow is zero, or too near it for a finite time.
 * Not for: a ventilator whose drive gas or leak is not in the flow.
 * Source: arithmetic; common practice, no source.
 */
export function cylinderEndurance({
  fullL,
  contentsL,
  reserve,
  flowLPerMin,
}: CylinderUse): Result<Endurance, CylinderError> {
  const toEmpty = contentsL / flowLPerMin;
  if (!Number.isFinite(toEmpty)) return fail({ kind: "no-flow" });
  const toReserve = Math.max(0, contentsL - reserve * fullL) / flowLPerMin;
  return ok({ toReserve: toReserve as Minutes, toEmpty: toEmpty as Minutes });
}
