import { createBiquad } from "./biquad.ts";

/** Most of the energy of speech; rumble of rotors and wheels lies below. */
const BAND_FROM_HZ = 200;
const BAND_TO_HZ = 4_000;

/**
 * Mean square of each frame's speech band, 16 kHz, −1…1; remembers the end of the frame before. A full-scale sine in the
 * band gives one half. Not for: changing the sound itself.
 */
export function createSpeechBand(): (frame: Float32Array) => number {
  const highPass = createBiquad("high", BAND_FROM_HZ);
  const lowPass = createBiquad("low", BAND_TO_HZ);
  return (frame) => {
    let energy = 0;
    for (const x of frame) energy += lowPass(highPass(x)) ** 2;
    return energy / frame.length;
  };
}
