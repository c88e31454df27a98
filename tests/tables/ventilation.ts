import type { PublishedRow, RowSource } from "./row.ts";

const HAND: RowSource = { reference: "worked by hand", locator: "the arithmetic of the row", read: "by hand" };

type PerKg = { readonly perKg: number; readonly kg: number };

/** Man of 178 cm: predicted weight 50 + 0.91 × (178 − 152.4) = 73.296 kg. 6, 7 and 8 mL/kg. */
export const TIDAL_ROWS: readonly PublishedRow<PerKg>[] = [
  { given: { perKg: 6, kg: 73.296 }, expected: 440, decimals: 0, source: HAND },
  { given: { perKg: 7, kg: 73.296 }, expected: 513, decimals: 0, source: HAND },
  { given: { perKg: 8, kg: 73.296 }, expected: 586, decimals: 0, source: HAND },
];

/** The same man: ideal weight 50 + 2.3 × (178 / 2.54 − 60) = 73.18 kg. */
export const DEAD_SPACE_ROWS: readonly PublishedRow<PerKg>[] = [
  { given: { perKg: 2.2, kg: 73.18 }, expected: 161, decimals: 0, source: HAND },
];

export const MINUTE_ROWS: readonly PublishedRow<{ readonly rate: number; readonly tidal: number }>[] = [
  { given: { rate: 14, tidal: 513 }, expected: 7.18, decimals: 2, source: HAND },
];

type Breath = { readonly rate: number; readonly tidal: number; readonly dead: number };

export const ALVEOLAR_VENTILATION_ROWS: readonly PublishedRow<Breath>[] = [
  { given: { rate: 14, tidal: 440, dead: 161 }, expected: 3.91, decimals: 2, source: HAND },
];

type Co2 = { readonly paco2: number; readonly target: number };

export const RATE_ROWS: readonly PublishedRow<Co2 & { readonly rate: number }>[] = [
  { given: { rate: 14, paco2: 50, target: 38 }, expected: 18.4, decimals: 1, source: HAND },
  { given: { rate: 20, paco2: 30, target: 40 }, expected: 15, decimals: 0, source: HAND },
];

/** 14 × (440 − 161) / (513 − 161) × 50 / 38 = 195300 / 13376; and a breath that stays as it is. */
export const RATE_AT_VOLUME_ROWS: readonly PublishedRow<Co2 & Breath & { readonly newTidal: number }>[] = [
  {
    given: { rate: 14, tidal: 440, dead: 161, newTidal: 513, paco2: 50, target: 38 },
    expected: 14.601,
    decimals: 3,
    source: HAND,
  },
  {
    given: { rate: 14, tidal: 440, dead: 161, newTidal: 440, paco2: 50, target: 38 },
    expected: 18.4,
    decimals: 1,
    source: HAND,
  },
];

const gapRow = (kPa: number, expected: number, reference: string, locator: string): PublishedRow<number> => ({
  given: kPa,
  expected,
  decimals: 1,
  source: { reference, locator: `${locator}; mmHg worked out by hand`, read: "by hand" },
});

/** PaCO2 − EtCO2 before or on admission, as published in kPa (the last in mixed patients), and what that is in mmHg. */
export const GAP_ROWS: readonly PublishedRow<number>[] = [
  gapRow(0.8, 6.0, "Sardesai N et al. PLoS One 2024. doi:10.1371/journal.pone.0297113", "median on admission"),
  gapRow(1.64, 12.3, "Doppmann P et al. Sci Rep 2021. doi:10.1038/s41598-021-89913-x", "mean on admission"),
  gapRow(2.0, 15.0, "PaCO2-EtCO2 gradient, one UK helicopter service, 2015-2018", "median"),
];

type Change = { readonly before: number; readonly after: number; readonly slope: number };

/** About 3 % for each mmHg, between 20 and 60 mmHg. */
export const FLOW_ROWS: readonly PublishedRow<Change>[] = [
  { given: { before: 40, after: 30, slope: 3 }, expected: -30, decimals: 0, source: HAND },
];
