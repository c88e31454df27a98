import type { RecordedCase } from "../recordedCase.ts";
import type { Cell } from "./writeCsv.ts";

/** What stands first in every row, so that rows of many cases can lie in one table. */
export const CASE_HEADER = ["case", "rehearsal", "time"] as const;

export const caseCells = ({ label, rehearsal }: RecordedCase, time: string): readonly Cell[] => [
  label,
  rehearsal ? "yes" : "no",
  time,
];

export const statusCell = (struck: boolean): string => (struck ? "struck" : "recorded");
