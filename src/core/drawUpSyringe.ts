import type { Concentration } from "./concentration.ts";
import { convertAmount, isOver, type Amount, type UnitMismatch } from "./doseAmount.ts";
import { doseIn, volumeFor } from "./drawUp.ts";
import type { Ml, Quantity, QuantityError } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";

/** `sizeMl` holds a whole number of divisions. */
export type Syringe = { readonly sizeMl: number; readonly divisionsPerMl: number };

/** From small to large. Source: common practice, no source: sizes and graduations as they usually are on sale. */
export const SYRINGES: readonly Syringe[] = [
  { sizeMl: 1, divisionsPerMl: 100 },
  { sizeMl: 3, divisionsPerMl: 10 },
  { sizeMl: 5, divisionsPerMl: 5 },
  { sizeMl: 10, divisionsPerMl: 5 },
  { sizeMl: 20, divisionsPerMl: 1 },
  { sizeMl: 50, divisionsPerMl: 1 },
];

export type Drawable = {
  readonly sizeMl: number;
  readonly drawMl: Ml;
  /** Of the volume asked for: negative where less is drawn. */
  readonly differencePct: Quantity<"% off">;
};

export type SyringeError =
  /** It would round to nothing: dilute first. */
  | { readonly kind: "too-small-to-draw"; readonly volumeMl: Ml; readonly smallestMl: number }
  | { readonly kind: "too-large-to-draw"; readonly volumeMl: Ml; readonly largestMl: number };

/**
 * The nearest volume that a syringe can show: the smallest syringe that holds it, to the nearest line.
 *
 * @param volumeMl  mL wanted.
 * @param ceilingMl never draw more than this, mL; a nearest line above it gives way to the line below.
 * @param syringes  from small to large.
 * @returns         size of the syringe, volume to draw, mL, and what rounding changed, %.
 *
 * Errors: `too-small-to-draw` rather than nothing; `too-large-to-draw`.
 * Not for: bags and pumps.
 * Source: common practice, no source.
 */
export function roundToSyringe(
  volumeMl: Ml,
  ceilingMl?: Ml,
  syringes: readonly Syringe[] = SYRINGES,
): Result<Drawable, SyringeError> {
  const syringe = syringes.find(({ sizeMl }) => !isOver(volumeMl, sizeMl));
  if (syringe === undefined) {
    return fail({ kind: "too-large-to-draw", volumeMl, largestMl: syringes.at(-1)?.sizeMl ?? 0 });
  }
  const { sizeMl, divisionsPerMl } = syringe;
  const nearest = Math.round(volumeMl * divisionsPerMl);
  const over = ceilingMl !== undefined && isOver(nearest / divisionsPerMl, ceilingMl);
  const lines = over ? Math.floor(ceilingMl * divisionsPerMl * (1 + 1e-9)) : nearest;
  if (lines === 0) return fail({ kind: "too-small-to-draw", volumeMl, smallestMl: 1 / divisionsPerMl });
  const drawMl = lines / divisionsPerMl;
  const differencePct = ((drawMl / volumeMl - 1) * 100) as Quantity<"% off">;
  return ok({ sizeMl, drawMl: drawMl as Ml, differencePct });
}

export type DrawnUp = Drawable & {
  /** What the rounded volume holds, in the unit of the dose. */
  readonly dose: Amount;
};

export type DrawUpError =
  UnitMismatch | QuantityError | SyringeError | { readonly kind: "over-cap"; readonly cap: Amount };

/**
 * A dose as it can be drawn up.
 *
 * @param dose    wanted.
 * @param of      the concentration in the hand.
 * @param options `cap`: never more than this at once, also not by rounding; `syringes` other than the usual ones.
 * @returns       the syringe, the volume, mL, the dose it really gives, and the difference, %.
 *
 * Errors: those of `volumeFor` and `roundToSyringe`; `over-cap` where the dose itself exceeds the cap.
 * Not for: a dose that nobody has checked; see `planDose`.
 * Source: common practice, no source.
 */
export function drawUp(
  dose: Amount,
  of: Concentration,
  options: { readonly cap?: Amount | undefined; readonly syringes?: readonly Syringe[] | undefined } = {},
): Result<DrawnUp, DrawUpError> {
  const volume = volumeFor(dose, of);
  if (!volume.ok) return volume;
  const cap = options.cap === undefined ? ok(undefined) : convertAmount(options.cap, dose.unit);
  if (!cap.ok) return cap;
  if (cap.value !== undefined && isOver(dose.value, cap.value.value)) return fail({ kind: "over-cap", cap: cap.value });
  const ceilingMl = cap.value && volume.value * (cap.value.value / dose.value);
  const drawable = roundToSyringe(volume.value, ceilingMl as Ml | undefined, options.syringes);
  if (!drawable.ok) return drawable;
  const drawn = doseIn(drawable.value.drawMl, of);
  const really = drawn.ok ? convertAmount(drawn.value, dose.unit) : drawn;
  return really.ok ? ok({ ...drawable.value, dose: really.value }) : really;
}
