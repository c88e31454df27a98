/**
 * The network's outputs in order: the blank of CTC, then the 39 phones of the CMU Pronouncing Dictionary without
 * stress. A phone's number is its index here. Source: the listener's phone list.
 */
export const OUTPUT_NAMES = [
  ...[
    "<blank>",
    "AA",
    "AE",
    "AH",
    "AO",
    "AW",
    "AY",
    "B",
    "CH",
    "D",
    "DH",
    "EH",
    "ER",
    "EY",
    "F",
    "G",
    "HH",
    "IH",
    "IY",
  ],
  ...["JH", "K", "L", "M", "N", "NG", "OW", "OY", "P", "R", "S", "SH", "T", "TH", "UH", "UW", "V", "W", "Y", "Z", "ZH"],
] as const;

export const BLANK = 0;
export const OUTPUT_COUNT = OUTPUT_NAMES.length;

/** Phone name to number; the blank is not a phone. */
export const PHONE_NUMBERS: ReadonlyMap<string, number> = new Map(
  OUTPUT_NAMES.map((name, i) => [name, i] as const).filter(([, i]) => i !== BLANK),
);
