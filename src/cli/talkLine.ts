import { fail, ok, type Result } from "../core/result.ts";

/** One line of input: what is said, and the case time it is said at, if the line sets it. */
export type TalkLine = { readonly atMs: number | undefined; readonly text: string };

const STAMP = /^\s*\[(\d+):([0-5]\d)\]\s*(.*)$/;
const LOOKS_LIKE_STAMP = /^\s*\[/;
/** A day. Time passes second by second, so a slip of the finger must not keep the case busy for hours. */
const MAX_MINUTES = 24 * 60;

/** Reads an optional leading `[m:ss]`. A bracket that is not a time is an error: it must not pass as speech at the wrong time. */
export function readTalkLine(line: string): Result<TalkLine, string> {
  const match = STAMP.exec(line);
  if (match !== null) {
    const [, minutes, seconds, text] = match;
    if (Number(minutes) > MAX_MINUTES)
      return fail(`time too late: "${line.trim()}". A case ends after ${MAX_MINUTES} minutes`);
    return ok({ atMs: (Number(minutes) * 60 + Number(seconds)) * 1000, text: (text ?? "").trim() });
  }
  if (LOOKS_LIKE_STAMP.test(line))
    return fail(`time not understood: "${line.trim()}". Write it as [m:ss], e.g. [2:05]`);
  return ok({ atMs: undefined, text: line.trim() });
}

/** Case time as `m:ss`; minutes go on past the hour. */
export function showCaseTime(ms: number): string {
  const seconds = Math.floor(ms / 1000);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}
