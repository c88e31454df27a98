/**
 * What is repeated in "Hear me", one line after another: short, out of our own language, of one meaning each.
 * Together they hold every digit, alone or in its ten, and the pairs that sound alike: fifteen and fifty, oh and eight,
 * rate and weight, five and nine (source: this project's benchmark, its worst confusions).
 */
export const HEAR_ME_LINES = [
  "pressure one fifteen over sixty two",
  "rate one oh eight",
  "sats ninety three",
  "temperature thirty seven point five",
  "weight fifty four kilos",
] as const;
