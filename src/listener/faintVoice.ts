import type { SoundShape } from "./soundShape.ts";

/**
 * Under this the listener mistakes numbers for others that fit as well. Measured on 16 numbers of people, rounded to 16
 * bits: right 16, 16, 14 and 7, taken for another number 0, 0, 2 and 6 at −45, −55, −65 and −75 dBFS.
 */
const FAINT_BELOW_DB = -60;

/** Whether an utterance is too soft in its recording for its words to be trusted, however well they fit. Not for: noise. */
export const isFaint = ({ levelDb }: SoundShape): boolean => levelDb < FAINT_BELOW_DB;
