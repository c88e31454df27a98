import type { CaseState } from "../log/caseState.ts";
import { reduceFacts } from "../log/reduceFact.ts";
import type { Fact, NewFact } from "../log/facts.ts";

/** Where facts could not be read, the next number is still past that of every fact in the store: no id is given twice. */
export function resumed(facts: readonly Fact[]): CaseState {
  const log = reduceFacts(facts);
  const numbers = facts.map(({ id }) => Number(/\d+$/u.exec(id)?.[0] ?? -1));
  return { ...log, factCount: numbers.reduce((next, n) => Math.max(next, n + 1), log.factCount) };
}

/** Two pages read the clock a little apart. */
const SAME_MS = 2_000;

/**
 * The running time at which a stored case is taken up again. While no page was there nobody counted: time goes on by the
 * device's clock, which may have been set meanwhile. Forward nothing can tell; back, it would be before the last entry.
 *
 * @param wallMs Unix ms by the device's own clock.
 * @returns      with the fact that says that it was set back.
 */
export function onResuming(
  log: CaseState,
  stored: readonly Fact[],
  wallMs: number,
): { readonly nowMs: number; readonly facts: readonly NewFact[] } {
  const nowMs = wallMs - log.setForwardMs;
  const lastMs = stored.reduce((last, { atMs }) => Math.max(last, atMs), -Infinity);
  if (nowMs >= lastMs - SAME_MS) return { nowMs: Math.max(nowMs, lastMs), facts: [] };
  return { nowMs: lastMs, facts: [{ type: "clock.changed", byMs: nowMs - lastMs }] };
}
