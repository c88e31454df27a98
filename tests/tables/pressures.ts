/** A row is the authority, not the code. `printed` decimals set the tolerance: half of the last digit. */
export type Row<In> = { readonly given: In; readonly expected: number; readonly decimals: number };

/** Source: DBP + (SBP − DBP) / 3, worked by hand in fractions: 80, 100, 190/3. */
export const MEAN_ROWS: readonly Row<{ sbp: number; dbp: number }>[] = [
  { given: { sbp: 120, dbp: 60 }, expected: 80.0, decimals: 1 },
  { given: { sbp: 140, dbp: 80 }, expected: 100.0, decimals: 1 },
  { given: { sbp: 90, dbp: 50 }, expected: 63.33, decimals: 2 },
  { given: { sbp: 110, dbp: 60 }, expected: 76.67, decimals: 2 },
];

/** Source: MAP − ICP, the definition in the NACCS and SBNS joint position statement, Br J Anaesth 2015; by hand. */
export const CPP_ROWS: readonly Row<{ map: number; icp: number }>[] = [
  { given: { map: 80, icp: 22 }, expected: 58, decimals: 0 },
  { given: { map: 90, icp: 30 }, expected: 60, decimals: 0 },
  { given: { map: 20, icp: 35 }, expected: -15, decimals: 0 },
];
