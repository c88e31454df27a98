import type { ClockMoved, RunningClock } from "../../app/ports.ts";
import { CLOCK_PERIOD_MS, lookAtClock, runningMs, type ClockReading } from "../../core/runningClock.ts";

const readHere = (): ClockReading => ({ wallMs: Date.now(), countMs: performance.now() });

/** A clock that runs on when the device's own is set, and tells of it. @param read tests hand in clocks of their own. */
export function createBrowserClock(read: () => ClockReading = readHere): RunningClock {
  let state = { last: read(), setForwardMs: 0 };
  const listeners = new Set<(moved: ClockMoved) => void>();
  // Looked at by whoever asks for the time, so that nothing is ever dated by a clock that has just been set.
  const nowMs = (): number => {
    const [next, move] = lookAtClock(state, read());
    state = next;
    const now = runningMs(state);
    if (move !== undefined) queueMicrotask(() => listeners.forEach((tell) => tell({ ...move, nowMs: now })));
    return now;
  };
  const every = (periodMs: number, tick: () => void): (() => void) => {
    const timer = setInterval(tick, periodMs);
    return () => clearInterval(timer);
  };
  every(CLOCK_PERIOD_MS, nowMs);
  return {
    nowMs,
    every,
    align: (setForwardMs) => void (state = { ...state, setForwardMs }),
    onMoved: (listener) => void listeners.add(listener),
  };
}
