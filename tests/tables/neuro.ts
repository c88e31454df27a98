import type { EyeScore, GcsParts, MotorScore, VerbalScore } from "../../src/core/gcs.ts";
import type { PublishedRow, RowSource } from "./row.ts";

const byHand = (reference: string, locator: string): RowSource => ({ reference, locator, read: "by hand" });
const parts = (eye: EyeScore, verbal: VerbalScore, motor: MotorScore): GcsParts => ({ eye, verbal, motor });

const SCALE = byHand("Glasgow coma scale, from memory", "sum of the parts");
export const GCS_ROWS: readonly PublishedRow<GcsParts>[] = [
  { given: parts(2, 2, 4), expected: 8, decimals: 0, source: SCALE },
  { given: parts(1, 1, 1), expected: 3, decimals: 0, source: SCALE },
  { given: parts(4, 5, 6), expected: 15, decimals: 0, source: SCALE },
  { given: parts(3, 4, 5), expected: 12, decimals: 0, source: SCALE },
];

const GCS_P = byHand("Brennan PM, Murray GD, Teasdale GM. GCS-Pupils score. J Neurosurg 2018", "GCS − PRS");
export const GCS_P_ROWS: readonly PublishedRow<{ total: number; fixed: 0 | 1 | 2 }>[] = [
  { given: { total: 4, fixed: 2 }, expected: 2, decimals: 0, source: GCS_P },
  { given: { total: 3, fixed: 2 }, expected: 1, decimals: 0, source: GCS_P },
  { given: { total: 15, fixed: 0 }, expected: 15, decimals: 0, source: GCS_P },
  { given: { total: 8, fixed: 1 }, expected: 7, decimals: 0, source: GCS_P },
];

export type IchGiven = {
  readonly gcs: number;
  readonly ml: number;
  readonly years: number;
  readonly ventricles?: boolean;
  readonly infratentorial?: boolean;
};
const ICH: RowSource = {
  reference: "Hemphill JC et al. The ICH score. Stroke 2001, in a reference article",
  locator: "points for each component",
  read: "summary",
};
const ich = (given: IchGiven, expected: number, source = ICH): PublishedRow<IchGiven> => ({
  given,
  expected,
  decimals: 0,
  source,
});
/** One step over each edge of each component; the rest of each row scores nothing. */
export const ICH_ROWS: readonly PublishedRow<IchGiven>[] = [
  ich({ gcs: 6, ml: 45, years: 72, ventricles: true }, 3, byHand(ICH.reference, ICH.locator)),
  ich({ gcs: 3, ml: 0, years: 0 }, 2),
  ich({ gcs: 4, ml: 0, years: 0 }, 2),
  ich({ gcs: 5, ml: 0, years: 0 }, 1),
  ich({ gcs: 12, ml: 0, years: 0 }, 1),
  ich({ gcs: 13, ml: 0, years: 0 }, 0),
  ich({ gcs: 15, ml: 0, years: 0 }, 0),
  ich({ gcs: 15, ml: 29.9, years: 0 }, 0),
  ich({ gcs: 15, ml: 30, years: 0 }, 1),
  ich({ gcs: 15, ml: 0, years: 65 }, 0),
  ich({ gcs: 15, ml: 0, years: 79 }, 0),
  ich({ gcs: 15, ml: 0, years: 80 }, 1),
  ich({ gcs: 15, ml: 0, years: 0, ventricles: true }, 1),
  ich({ gcs: 15, ml: 0, years: 0, infratentorial: true }, 1),
  ich({ gcs: 3, ml: 60, years: 90, ventricles: true, infratentorial: true }, 6),
];

export const HAEMATOMA_ROWS: readonly PublishedRow<{ a: number; b: number; c: number }>[] = [
  {
    given: { a: 5, b: 4, c: 4 },
    expected: 40,
    decimals: 0,
    source: byHand("ABC/2 form, from memory", "A × B × C / 2"),
  },
];
