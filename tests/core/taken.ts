import type { Result } from "../../src/core/result.ts";

/** What a door let through; a test that gave it something else is wrong itself. */
export function taken<T>(result: Result<T, unknown>): T {
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.error)}`);
  return result.value;
}
