import { fail, ok, type Result } from "../../core/result.ts";
import type { Fact } from "../facts.ts";
import { fromVersionOne } from "./versionOne.ts";

/** The shape of facts that this version of the app writes. */
export const FACT_VERSION: Fact["v"] = 2;

/** What a `Date` can hold, ms from its zero. */
const MAX_TIME_MS = 8.64e15;
const isTime = (atMs: unknown): boolean => typeof atMs === "number" && Math.abs(atMs) <= MAX_TIME_MS;

/**
 * The one door from stored data into a fact: checks the stamp and the shape version, not each kind's own fields, which only
 * this app writes; and brings what an older version wrote into the shape of now.
 *
 * Errors: a sentence saying why the record cannot be used. A later version's facts are refused, never guessed at.
 */
export function readFact(stored: unknown): Result<Fact, string> {
  if (typeof stored !== "object" || stored === null) return fail("is not a record");
  const { v, id, atMs, type } = stored as Readonly<Record<string, unknown>>;
  if (typeof v !== "number") return fail("has no version");
  if (v > FACT_VERSION) return fail(`was written by a newer version (${v})`);
  if (typeof id !== "string" || typeof type !== "string" || !isTime(atMs)) return fail("has no id, type or time");
  return ok(v === 1 ? fromVersionOne(stored as { readonly v: 1; readonly type: string }) : (stored as Fact));
}
