import type { RecordedCase } from "../recordedCase.ts";
import type { Cell } from "./writeCsv.ts";

/**
 * What stands first in every row, so that rows of many cases can lie in one table. There the id tells cases apart: labels
 * come again.
 */
export const CASE_HEADER = ["case", "case id", "rehearsal", "time"] as const;

export const caseCells = ({ label, caseId, rehearsal }: RecordedCase, time: string): readonly Cell[] => [
  label,
  caseId,
  rehearsal ? "yes" : "no",
  time,
];

export const statusCell = (struck: boolean): string => (struck ? "struck" : "recorded");
