import type { PublishedRow, RowSource } from "./row.ts";

const ALVEOLAR: RowSource = {
  reference: "alveolar gas equation, standard form, from memory",
  locator: "water 47 mmHg, exchange ratio 0.8",
  read: "by hand",
};
const SEVERINGHAUS = "Severinghaus JW. J Appl Physiol 1979;46:599-602. doi:10.1152/jappl.1979.46.3.599";
const equation = (locator: string): RowSource => ({ reference: SEVERINGHAUS, locator, read: "by hand" });

type Breathed = { readonly fio2: number; readonly pb: number; readonly paco2: number };

const breathed = (fio2: number, pb: number, paco2: number, expected: number): PublishedRow<Breathed> => ({
  given: { fio2, pb, paco2 },
  expected,
  decimals: 1,
  source: ALVEOLAR,
});

export const ALVEOLAR_ROWS: readonly PublishedRow<Breathed>[] = [
  breathed(1, 760, 40, 673.0),
  breathed(0.21, 760, 40, 101.8),
  // A cabin at about 8,000 ft.
  breathed(0.21, 565, 40, 60.9),
  breathed(0.21, 760, 60, 77.9),
];

export const SHORT_ALVEOLAR_ROWS: readonly PublishedRow<Breathed>[] = [
  breathed(1, 760, 40, 663.0),
  breathed(0.21, 760, 40, 99.7),
  breathed(0.21, 565, 40, 58.8),
  breathed(0.21, 760, 60, 74.7),
];

/** Equation 1 as the abstract prints it, worked out apart from this project. Oxygen pressure in mmHg, saturation in %. */
export const SATURATION_ROWS: readonly PublishedRow<number>[] = (
  [
    [20, 31.98],
    [26.8, 49.86],
    [30, 57.38],
    [40, 74.95],
    [50, 84.99],
    [60, 90.58],
    [70, 93.79],
    [80, 95.73],
    [100, 97.75],
    [150, 99.32],
  ] as const
).map(([given, expected]) => ({ given, expected, decimals: 2, source: equation("equation 1") }));

/** Equation 2, the form with 0.17 S⁶. Saturation as a fraction, oxygen pressure in mmHg. */
export const PO2_ROWS: readonly PublishedRow<number>[] = (
  [
    [0.8, 44.34],
    [0.9, 57.98],
    [0.93, 66.09],
  ] as const
).map(([given, expected]) => ({ given, expected, decimals: 2, source: equation("equation 2, 0.17 form") }));

/**
 * The standard curve that both equations were fitted to, not either equation: mmHg, %. Equation 1 is stated to lie within
 * 0.55 of it.
 */
export const STANDARD_CURVE = {
  source: {
    reference: SEVERINGHAUS,
    locator: "standard curve, six of its points as a course exercise prints them, quesba.com question 821185",
    read: "summary",
  } satisfies RowSource,
  points: [
    { po2: 50, saturationPct: 85.08 },
    { po2: 60, saturationPct: 90.85 },
    { po2: 70, saturationPct: 94.06 },
    { po2: 80, saturationPct: 95.84 },
    { po2: 90, saturationPct: 96.88 },
    { po2: 100, saturationPct: 97.49 },
  ],
} as const;

const HAND: RowSource = { reference: "worked by hand", locator: "the arithmetic of the row", read: "by hand" };

export const RESIDUAL_ROWS: readonly PublishedRow<{ readonly perKg: number; readonly kg: number }>[] = [
  { given: { perKg: 30, kg: 70 }, expected: 2100, decimals: 0, source: HAND },
];

export const STORE_ROWS: readonly PublishedRow<{
  readonly frc: number;
  readonly start: number;
  readonly end: number;
}>[] = [
  { given: { frc: 2100, start: 0.87, end: 0.1 }, expected: 1617, decimals: 0, source: HAND },
  // Lying flat.
  { given: { frc: 2000, start: 0.87, end: 0.1 }, expected: 1540, decimals: 0, source: HAND },
];

export const APNOEA_ROWS: readonly PublishedRow<{ readonly store: number; readonly uptake: number }>[] = [
  { given: { store: 1617, uptake: 250 }, expected: 6.5, decimals: 1, source: HAND },
  { given: { store: 1617, uptake: 250 }, expected: 6.468, decimals: 3, source: HAND },
];

export const FREE_GAS_ROWS: readonly PublishedRow<{ readonly bar: number; readonly water: number }>[] = [
  { given: { bar: 137, water: 2 }, expected: 274, decimals: 0, source: HAND },
  { given: { bar: 200, water: 4.6 }, expected: 920, decimals: 0, source: HAND },
];

type Cylinder = { readonly full: number; readonly now: number; readonly reserve: number; readonly flow: number };

/** 920 L full, 460 L left, a quarter kept: 230 L to use. Minutes to the reserve. */
export const RESERVE_ROWS: readonly PublishedRow<Cylinder>[] = [
  { given: { full: 920, now: 460, reserve: 0.25, flow: 15 }, expected: 15.33, decimals: 2, source: HAND },
  { given: { full: 920, now: 920, reserve: 0.25, flow: 10 }, expected: 69, decimals: 0, source: HAND },
  { given: { full: 920, now: 230, reserve: 0.25, flow: 10 }, expected: 0, decimals: 0, source: HAND },
  { given: { full: 920, now: 100, reserve: 0.25, flow: 10 }, expected: 0, decimals: 0, source: HAND },
  { given: { full: 920, now: 460, reserve: 0, flow: 10 }, expected: 46, decimals: 0, source: HAND },
];

/** Minutes until nothing is left. */
export const EMPTY_ROWS: readonly PublishedRow<Cylinder>[] = [
  { given: { full: 920, now: 460, reserve: 0.25, flow: 15 }, expected: 30.67, decimals: 2, source: HAND },
  { given: { full: 920, now: 100, reserve: 0.25, flow: 10 }, expected: 10, decimals: 0, source: HAND },
  { given: { full: 920, now: 0, reserve: 0.25, flow: 10 }, expected: 0, decimals: 0, source: HAND },
];
