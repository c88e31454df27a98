import type { RecordFileError } from "../../log/recordFile/readRecordFile.ts";
import type { ProtocolMark } from "../../log/facts.ts";
import { sentences } from "./sentence.ts";

type Row = {
  readonly label?: string;
  readonly rehearsal?: boolean;
  readonly openedAtMs?: number;
  readonly isClosed: boolean;
};

/** "Case kilo four seven, 29 Nov 2026, 14:05, closed". @param zone IANA name. */
export function showCaseRow({ label, rehearsal, openedAtMs, isClosed }: Row, zone: string): string {
  const when = new Intl.DateTimeFormat("en-GB", { dateStyle: "medium", timeStyle: "short", timeZone: zone });
  const name = `${rehearsal === true ? "Rehearsal" : "Case"} ${label ?? "whose opening cannot be read"}`;
  return [name, ...(openedAtMs === undefined ? [] : [when.format(openedAtMs)]), isClosed ? "closed" : "open"].join(
    ", ",
  );
}

type Named = { readonly label: string; readonly rehearsal: boolean };
const nameOf = ({ label, rehearsal }: Named): string => [rehearsal ? "rehearsal" : "case", label].join(" ").trim();

export const sayEraseCase = (named: Named, word: string): string =>
  sentences(`To erase ${nameOf(named)} from this device, type: ${word}`, "It cannot be brought back");
export const sayErasedCase = (named: Named): string =>
  sentences(`Erased from this device: ${nameOf(named)}`, "Files saved from it are not");
export const sayOtherLabel = (word: string): string => sentences(`Not erased: type ${word}`);

/** What cannot be used of a case; empty where all of it can. */
export const sayCaseFaults = (faults: readonly string[]): string =>
  faults.length === 0 ? "" : sentences("Part of this case cannot be used", ...faults);

export const sayOtherProtocol = ({ name, version, hash = "" }: ProtocolMark): string =>
  sentences(
    `That case ran on another protocol, ${name} ${version}, ${hash.slice(0, 8)}`,
    "Choose that protocol file to print it, or save the case as JSON",
  );

export const sayAdded = ({ label, rehearsal }: Named): string =>
  `${rehearsal ? "Rehearsal" : "Case"} ${label} added. Its chain is whole.`;

/** The network is gone before everything was stored, or a newer version has taken the place of these files. */
export const PART_MISSING =
  "The part of Tragus that makes it cannot be loaded. Save the record as JSON; load the page anew when there is time.";

/** How many faults are named one by one. */
const NAMED = 5;

export function sayNoRecordFile(error: RecordFileError): string {
  switch (error.kind) {
    case "too-large":
      return "Not added: the file is too large to be a record.";
    case "not-json":
      return `Not added: the file is no JSON, or cut short (${error.detail}).`;
    case "not-a-record":
      return "Not added: the file is no record of a case.";
    case "newer-version":
      return `Not added: the file was written by a newer version (${error.version}).`;
    case "altered": {
      const more = error.faults.length - NAMED;
      const named = error.faults.slice(0, NAMED).map((fault) => fault.replace(/\.$/u, ""));
      return sentences(
        "Not added: the file was altered or is damaged",
        ...named,
        more > 0 ? `${more} more` : undefined,
      );
    }
  }
}
