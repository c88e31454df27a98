import { fail, ok, type Result } from "../../core/result.ts";
import type { Fact } from "../../log/facts.ts";

/** The shape of facts that this version of the app writes, and the only one there has been. */
const FACT_VERSION: Fact["v"] = 1;

/**
 * The one door from stored data into a fact: checks the stamp and the shape version, not each kind's own fields,
 * which only this app has ever written.
 *
 * Errors: a sentence saying why the record cannot be used. A later version's facts are refused, never guessed at.
 */
export function readFact(stored: unknown): Result<Fact, string> {
  if (typeof stored !== "object" || stored === null) return fail("is not a record");
  const { v, id, atMs, type } = stored as Record<string, unknown>;
  if (typeof v === "number" && v > FACT_VERSION) return fail(`was written by a newer version (${v})`);
  if (v !== FACT_VERSION) return fail("has no version");
  if (typeof id !== "string" || typeof type !== "string" || !Number.isFinite(atMs))
    return fail("has no id, type or time");
  return ok(stored as Fact);
}
