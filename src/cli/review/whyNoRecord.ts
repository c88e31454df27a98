import { unreachable } from "../../core/unreachable.ts";
import type { RecordFileError } from "../../log/recordFile/readRecordFile.ts";

const FAULTS_NAMED = 2;

/** Why a file is no record that can be used, as the end of a sentence about it. */
export function whyNoRecord(error: RecordFileError): string {
  switch (error.kind) {
    case "too-large":
      return `is too large: ${error.characters} characters`;
    case "not-json":
      return "is broken or cut off: it is no JSON";
    case "not-a-record":
      return "is no record of a case";
    case "newer-version":
      return `was written by a later version of Tragus: version ${error.version} of its form`;
    case "altered": {
      const more = error.faults.length - FAULTS_NAMED;
      const named = error.faults.slice(0, FAULTS_NAMED).join(" ");
      return `is damaged or was altered: ${named}${more > 0 ? ` And ${more} more.` : ""}`;
    }
    default:
      return unreachable(error);
  }
}
