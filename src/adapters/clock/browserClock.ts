import type { Clock } from "../../app/ports.ts";

/** The device's own clock: follows it when it is set, forwards or back. */
export const browserClock: Clock = {
  nowMs: () => Date.now(),
  every: (periodMs, tick) => {
    const timer = setInterval(tick, periodMs);
    return () => clearInterval(timer);
  },
};
