import type { LogEntry } from "../chain/entry.ts";
import { RECORD_FILE_VERSION, RECORD_FORMAT, type RecordFile } from "./recordFile.ts";

type About = Pick<RecordFile, "caseId" | "label" | "rehearsal">;

/** One entry a line, so that two files can be compared by eye. The same case gives the same text, byte for byte. */
export function writeRecordFile({ caseId, label, rehearsal }: About, entries: readonly LogEntry[]): string {
  const head = JSON.stringify({ format: RECORD_FORMAT, v: RECORD_FILE_VERSION, caseId, label, rehearsal });
  const lines = entries.map(({ n, caseMs, wallMs, protocolHash, fact, prev, hash }) =>
    JSON.stringify({ caseId, n, caseMs, wallMs, protocolHash, fact, prev, hash }),
  );
  return `${head.slice(0, -1)},"entries":[\n${lines.join(",\n")}\n]}\n`;
}
