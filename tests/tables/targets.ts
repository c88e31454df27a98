import type { Cause } from "../../src/protocol/protocol.ts";
import type { PublishedRow, RowSource } from "./row.ts";

/** A value held against the limit that counts for this patient; what it lacks of it, or how far it is over it. */
export type TargetCase = {
  readonly ageA?: number;
  readonly cause?: Cause;
  readonly herniating?: boolean;
  readonly limit: string;
  /** None: the row gives the limit itself. */
  readonly value?: number;
};

const carney: RowSource = {
  reference: "Carney N et al., Neurosurgery 2017;80:6-15",
  locator: "recommendations on blood pressure, perfusion and intracranial pressure",
  read: "summary",
};
const lulla: RowSource = {
  reference: "Lulla A et al., Prehosp Emerg Care 2023;27:507-538",
  locator: "recommendations on pressure, oxygen and carbon dioxide",
  read: "summary",
};
const older: RowSource = {
  reference: "2007 guideline, in Anesthesiol Clin 2012;30:333-346",
  locator: "table 3",
  read: "primary",
};
const handbook: RowSource = {
  reference: "Harriet Lane Handbook, 22nd edition",
  locator: "raised intracranial pressure: perfusion over 40",
  read: "primary",
};
const kochanek: RowSource = {
  reference: "Kochanek PM et al., Pediatr Crit Care Med 2019;20:280-289",
  locator: "intracranial and perfusion pressure",
  read: "memory",
};
const centile: RowSource = { reference: "5th centile of systolic pressure", locator: "70 + 2 × age", read: "memory" };
const median: RowSource = { reference: "median systolic pressure", locator: "90 + 2 × age", read: "by hand" };
const bleed: RowSource = {
  reference: "Greenberg SM et al., Stroke 2022",
  locator: "mild to moderate bleed: aim 140, hold 130 to 150",
  read: "memory",
};
const choice: RowSource = { reference: "common practice, no source", locator: "default targets", read: "by hand" };
const algebra: RowSource = { reference: "MAP = CPP + 20", locator: "children", read: "by hand" };

const herniation: RowSource = { reference: "MAP = CPP + 30", locator: "while herniation is treated", read: "by hand" };

const row = (given: TargetCase, expected: number, source: RowSource): PublishedRow<TargetCase> => ({
  given,
  expected,
  decimals: 0,
  source,
});

/** The limit itself. */
export const LIMIT_ROWS: readonly PublishedRow<TargetCase>[] = [
  row({ ageA: 15, limit: "sbpMmHg.target" }, 110, carney),
  row({ ageA: 49, limit: "sbpMmHg.target" }, 110, carney),
  row({ ageA: 50, limit: "sbpMmHg.target" }, 100, carney),
  row({ ageA: 69, limit: "sbpMmHg.target" }, 100, carney),
  row({ ageA: 71, limit: "sbpMmHg.target" }, 110, carney),
  // The source leaves 70 itself out: the stricter floor is a choice.
  row({ ageA: 70, limit: "sbpMmHg.target" }, 110, choice),
  row({ ageA: 30, limit: "sbpMmHg.critical" }, 100, lulla),
  row({ ageA: 75, limit: "sbpMmHg.critical" }, 100, lulla),
  row({ ageA: 60, limit: "sbpMmHg.critical" }, 90, {
    reference: "Spaite DW et al., Ann Emerg Med 2017;70:522-530",
    locator: "depth and duration under 90",
    read: "abstract",
  }),
  row({ limit: "sbpMmHg.target" }, 110, choice),
  row({ limit: "mapMmHg.target" }, 90, choice),
  row({ limit: "cppMmHg.target" }, 60, carney),
  row({ ageA: 60, limit: "mapMmHg.critical" }, 80, choice),
  row({ ageA: 30, limit: "cppMmHg.critical" }, 50, older),
  row({ ageA: 30, limit: "cppMmHg.noGainAbove" }, 70, carney),
  row({ ageA: 30, limit: "icpTreatAboveMmHg" }, 22, carney),
  row({ ageA: 0.5, limit: "sbpMmHg.critical" }, 70, { ...centile, locator: "1 to 12 months" }),
  row({ ageA: 1, limit: "sbpMmHg.critical" }, 72, centile),
  row({ ageA: 3, limit: "sbpMmHg.critical" }, 76, centile),
  row({ ageA: 6, limit: "sbpMmHg.critical" }, 82, centile),
  // Whole years: six and three quarters is still six.
  row({ ageA: 6.75, limit: "sbpMmHg.critical" }, 82, centile),
  row({ ageA: 10, limit: "sbpMmHg.critical" }, 90, centile),
  row({ ageA: 11, limit: "sbpMmHg.critical" }, 90, { ...centile, locator: "over 10 years" }),
  row({ ageA: 14, limit: "sbpMmHg.critical" }, 90, { ...centile, locator: "over 10 years" }),
  row({ ageA: 6, limit: "sbpMmHg.target" }, 102, median),
  row({ ageA: 10, limit: "sbpMmHg.target" }, 110, median),
  row({ ageA: 0.5, limit: "cppMmHg.critical" }, 40, handbook),
  row({ ageA: 6, limit: "cppMmHg.critical" }, 40, handbook),
  row({ ageA: 14, limit: "cppMmHg.target" }, 50, kochanek),
  row({ ageA: 6, limit: "icpTreatAboveMmHg" }, 20, kochanek),
  row({ ageA: 6, limit: "mapMmHg.critical" }, 60, algebra),
  row({ ageA: 6, limit: "mapMmHg.target" }, 65, algebra),
  row({ ageA: 14, limit: "mapMmHg.target" }, 70, algebra),
  row({ ageA: 30, limit: "etco2MmHg.low" }, 35, lulla),
  row({ ageA: 30, limit: "etco2MmHg.high" }, 45, lulla),
  row({ ageA: 30, herniating: true, limit: "etco2MmHg.low" }, 30, lulla),
  row({ ageA: 30, herniating: true, limit: "etco2MmHg.high" }, 35, lulla),
  row({ herniating: true, limit: "mapMmHg.target" }, 90, herniation),
  row({ ageA: 0.5, herniating: true, limit: "mapMmHg.target" }, 72, herniation),
  row({ ageA: 6, herniating: true, limit: "mapMmHg.target" }, 75, herniation),
  row({ ageA: 14, herniating: true, limit: "mapMmHg.target" }, 80, herniation),
  row({ ageA: 6, herniating: true, limit: "mapMmHg.critical" }, 60, algebra),
  row({ ageA: 60, herniating: true, limit: "sbpMmHg.target" }, 110, choice),
  row({ ageA: 60, herniating: true, limit: "sbpMmHg.forAge" }, 100, carney),
  row({ ageA: 60, herniating: true, limit: "sbpMmHg.critical" }, 90, choice),
  row({ ageA: 6, herniating: true, limit: "sbpMmHg.target" }, 102, median),
  row({ ageA: 60, cause: "bleed", limit: "sbpMmHg.target" }, 130, bleed),
  row({ ageA: 60, cause: "bleed", limit: "sbpMmHg.ceiling" }, 150, bleed),
];

/** What a value lacks of a lower limit; nothing when it is at the limit. */
export const UNDER_ROWS: readonly PublishedRow<TargetCase>[] = [
  row({ ageA: 30, limit: "sbpMmHg.target", value: 108 }, 2, carney),
  row({ ageA: 30, limit: "sbpMmHg.target", value: 110 }, 0, carney),
  row({ ageA: 60, limit: "sbpMmHg.target", value: 104 }, 0, carney),
  row({ ageA: 30, limit: "cppMmHg.target", value: 58 }, 2, carney),
  row({ ageA: 30, limit: "cppMmHg.critical", value: 49 }, 1, older),
  row({ ageA: 30, limit: "sbpMmHg.critical", value: 98 }, 2, lulla),
  row({ limit: "mapMmHg.target", value: 80 }, 10, choice),
  row({ limit: "sbpMmHg.target", value: 120 }, 0, choice),
  // MAP 60 with ICP 22.
  row({ ageA: 6, limit: "cppMmHg.critical", value: 60 - 22 }, 2, handbook),
  row({ limit: "spo2Pct.critical", value: 89 }, 1, lulla),
  row({ limit: "spo2Pct.target", value: 92 }, 2, choice),
  row({ limit: "etco2MmHg.low", value: 33 }, 2, lulla),
  row({ herniating: true, limit: "etco2MmHg.low", value: 28 }, 2, lulla),
  row({ ageA: 60, cause: "bleed", limit: "sbpMmHg.target", value: 124 }, 6, bleed),
];

/** How far a value stands over an upper limit. */
export const OVER_ROWS: readonly PublishedRow<TargetCase>[] = [
  row({ ageA: 30, limit: "icpTreatAboveMmHg", value: 22 }, 0, carney),
  row({ ageA: 30, limit: "icpTreatAboveMmHg", value: 23 }, 1, carney),
  row({ ageA: 30, limit: "cppMmHg.noGainAbove", value: 75 }, 5, carney),
  row({ limit: "etco2MmHg.high", value: 46 }, 1, lulla),
  row({ ageA: 60, cause: "bleed", limit: "sbpMmHg.ceiling", value: 165 }, 15, bleed),
];
