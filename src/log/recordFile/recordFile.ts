import type { LogEntry } from "../chain/entry.ts";

/** A case as it is saved to a file and read back: its chain as it stands, and what it is called. */
export type RecordFile = {
  readonly format: typeof RECORD_FORMAT;
  readonly v: typeof RECORD_FILE_VERSION;
  readonly caseId: string;
  readonly label: string;
  readonly rehearsal: boolean;
  readonly entries: readonly LogEntry[];
};

export const RECORD_FORMAT = "tragus-record";
export const RECORD_FILE_VERSION = 1;
