import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { browserClock } from "../../../src/adapters/clock/browserClock.ts";

beforeEach(() => void vi.useFakeTimers({ now: 1_000 }));
afterEach(() => void vi.useRealTimers());

it("gives the device's time", () => {
  expect(browserClock.nowMs()).toBe(1_000);
});

it("ticks until stopped", () => {
  const tick = vi.fn();
  const stop = browserClock.every(250, tick);
  vi.advanceTimersByTime(1_000);
  stop();
  vi.advanceTimersByTime(1_000);
  expect(tick).toHaveBeenCalledTimes(4);
});
