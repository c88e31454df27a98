import type { CaseState } from "../../log/caseState.ts";
import { sentences } from "./sentence.ts";

type Named = Pick<CaseState, "label" | "isRehearsal">;

/** "Case kilo four seven", "Rehearsal kilo four seven". */
const caseName = ({ label = "without a name", isRehearsal }: Named): string =>
  `${isRehearsal ? "Rehearsal" : "Case"} ${label}`;

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

export const sayWhichCase = (log: Named): string =>
  sentences(caseName(log), log.isRehearsal ? "No patient" : undefined);

export const askNewCase = (log: Named, rehearsal: boolean): string =>
  `Close ${lower(caseName(log))}, and open a new ${rehearsal ? "rehearsal" : "case"}?`;

export const askErase = (log: Named): string =>
  sentences(`Erase ${lower(caseName(log))}?`, "It cannot be brought back", `Say: erase ${log.label ?? ""}`);

export const ERASE_FIRST = "Say: erase this case.";

export const sayClosed = (log: Named): string => `${caseName(log)} closed.`;
export const sayOpened = (log: Named): string => sentences(`${caseName(log)} opened`);
/** Without its name: these words stand in the record of the next case. */
export const sayErased = (log: Named): string =>
  sentences(`${log.isRehearsal ? "Rehearsal" : "Case"} erased from this device`, "Files saved from it are not");
export const NOT_CLOSED = "Not closed: the record cannot be written. The case goes on.";
export const NOT_ERASED = "Not erased: the record cannot be written.";
export const CLEARED = "The browser cleared the record. This case is written again. Cases before it are gone.";
export const READ_ONLY = "Read only: another tab keeps this case.";

/** How many entries that are not saved are named one by one. */
const NAMED = 3;

/** @param heard the words behind them: what is to be written down by hand. */
export function showNotSaved(heard: readonly string[]): string {
  const quoted = heard.map((words) => `“${words}”`);
  if (heard.length === 0) return "Not saved";
  return heard.length <= NAMED
    ? `Not saved: ${quoted.join(", ")}`
    : `Not saved: ${heard.length} entries, last ${quoted.at(-1)}`;
}

/** A case of a whole day with its voice notes is a few MB: this is room for several, and time to make more. */
const LITTLE_BYTES = 50_000_000;

type Room = { readonly isKept?: boolean; readonly freeBytes?: number };

const littleRoom = ({ freeBytes = Infinity }: Room): string | undefined =>
  freeBytes < LITTLE_BYTES ? `Little room for the record: ${Math.floor(freeBytes / 1e6)} megabytes` : undefined;

/** What must be known of the place where the record is kept; nothing where all is well. Said once, so it is short. */
export const sayRoom = (room: Room): string =>
  sentences(littleRoom(room), room.isKept === false ? "This browser may clear the record" : undefined);

/** The same for the screen, with what to do. */
export const showRoom = (room: Room): string =>
  sentences(
    littleRoom(room),
    room.isKept === false
      ? "This browser may clear the record when space runs short. Save it to a file after the case"
      : undefined,
  );

const hours = (ms: number): string => {
  const minutes = Math.round(Math.abs(ms) / 60_000);
  if (minutes < 1) return `${Math.round(Math.abs(ms) / 1000)} seconds`;
  if (minutes < 90) return minutes === 1 ? "1 minute" : `${minutes} minutes`;
  return `${Math.round(minutes / 6) / 10} hours`;
};

export const sayClockSet = (byMs: number): string =>
  sentences(`The device's clock was set ${byMs < 0 ? "back" : "forward"} ${hours(byMs)}`, "Case times run on");
export const saySlept = (forMs: number): string =>
  sentences(`The device slept or stood still ${hours(forMs)}`, "Nothing was heard or watched meanwhile");
