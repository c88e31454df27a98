import { quantityOf, type Cm, type Ml } from "./quantity.ts";

/** One span of a clot on the scan. Not a height: no clot is as long as the head, and none is measured closer than a millimetre. */
export const clotCm = quantityOf<"cm">({ min: 0.1, max: 20 });

/**
 * Volume of a haematoma from a scan, as half of a box.
 *
 * @param lengthCm largest span on the slice that shows most, cm, of `clotCm`.
 * @param widthCm  span across it on the same slice, cm.
 * @param depthCm  span from the first to the last slice, cm.
 * @returns        A × B × C / 2, mL, unrounded; cm³ and mL are the same.
 *
 * Not for: clots that follow the skull, or are in several parts; the form takes an ellipsoid.
 * Source: the ABC/2 form, from memory.
 */
export const haematomaVolume = (lengthCm: Cm, widthCm: Cm, depthCm: Cm): Ml =>
  ((lengthCm * widthCm * depthCm) / 2) as Ml;
