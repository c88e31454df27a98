import { fail, ok, type Result } from "../../core/result.ts";
import type { RunningClock } from "../../app/ports.ts";

export type ClockError = { readonly kind: "backwards"; readonly nowMs: number; readonly askedMs: number };

/** A clock that stands still until it is moved. */
export interface ManualClock extends RunningClock {
  /**
   * Moves to a later time (Unix ms), ticking on the way: each tick sees its own due time, earliest first.
   *
   * Errors: `backwards` when the time asked for has passed; nothing then moves.
   */
  advanceTo(ms: number): Result<void, ClockError>;
}

type Tick = { dueMs: number; readonly periodMs: number; readonly tick: () => void };

/** For a case in the terminal and for tests, where lines and not seconds move the time. */
export function createManualClock(startMs: number): ManualClock {
  let nowMs = startMs;
  const ticks = new Set<Tick>();
  const nextUpTo = (ms: number) =>
    [...ticks]
      .filter(({ dueMs }) => dueMs <= ms)
      .reduce<Tick | undefined>(
        (first, each) => (first === undefined || each.dueMs < first.dueMs ? each : first),
        undefined,
      );

  return {
    nowMs: () => nowMs,
    // Nobody can set it.
    align: () => undefined,
    onMoved: () => undefined,
    every: (periodMs, tick) => {
      const entry = { dueMs: nowMs + periodMs, periodMs, tick };
      ticks.add(entry);
      return () => void ticks.delete(entry);
    },
    advanceTo: (ms) => {
      if (ms < nowMs) return fail({ kind: "backwards", nowMs, askedMs: ms });
      for (let next = nextUpTo(ms); next !== undefined; next = nextUpTo(ms)) {
        nowMs = next.dueMs;
        next.dueMs += next.periodMs;
        next.tick();
      }
      nowMs = ms;
      return ok(undefined);
    },
  };
}
