import type { Spoken } from "../../app/ports.ts";

const PACE = { least: 0.6, most: 1.5 };
/** Softer would not be heard, louder would be nothing but limit. */
const GAIN_DB = { least: -20, most: 12 };

const within = ({ least, most }: { readonly least: number; readonly most: number }, value: number): number =>
  Math.min(most, Math.max(least, value));

/** Times the usual pace, 0.6 to 1.5; what is no number counts as usual. */
export const paceOf = ({ pace = 1 }: Spoken): number => (Number.isNaN(pace) ? 1 : within(PACE, pace));

/** dB against the usual loudness, −20 to 12; what is no number counts as usual. */
export const gainDbOf = ({ gainDb = 0 }: Spoken): number => (Number.isNaN(gainDb) ? 0 : within(GAIN_DB, gainDb));
