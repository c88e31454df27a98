import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { createBrowserClock } from "../../../src/adapters/clock/browserClock.ts";
import type { ClockMoved } from "../../../src/app/ports.ts";

const HOUR_MS = 3_600_000;
const START_MS = 1_800_000_000_000;

beforeEach(
  () => void vi.useFakeTimers({ now: START_MS, toFake: ["setInterval", "clearInterval", "Date", "performance"] }),
);
afterEach(() => void vi.useRealTimers());

/** A clock over two that tests can set: `wallMs` as people do, `countMs` as a device that comes round late. */
function clockOverTwo() {
  const read = { wallMs: START_MS, countMs: 0 };
  const clock = createBrowserClock(() => ({ ...read }));
  const moved: ClockMoved[] = [];
  clock.onMoved((move) => moved.push(move));
  const pass = (ms: number) => {
    read.wallMs += ms;
    read.countMs += ms;
    return clock.nowMs() - START_MS;
  };
  return { read, clock, moved, pass };
}

it("gives the device's time", () => {
  expect(createBrowserClock().nowMs()).toBe(START_MS);
});

it("ticks until stopped", () => {
  const tick = vi.fn();
  const stop = createBrowserClock().every(250, tick);
  vi.advanceTimersByTime(1_000);
  stop();
  vi.advanceTimersByTime(1_000);
  expect(tick).toHaveBeenCalledTimes(4);
});

it.each([
  ["an hour forward", HOUR_MS],
  ["an hour back", -HOUR_MS],
  ["a day back", -24 * HOUR_MS],
  ["three seconds forward", 3_000],
])("runs on when the device's clock is set %s, and tells of it once", async (_what, byMs) => {
  const { read, moved, pass } = clockOverTwo();
  pass(250);
  read.wallMs += byMs;
  expect(pass(250)).toBe(500);
  expect(pass(250)).toBe(750);
  await Promise.resolve();
  expect(moved).toEqual([{ kind: "set", byMs, nowMs: START_MS + 500 }]);
});

it("counts the time that the device slept, and tells of it", async () => {
  const { read, moved, pass } = clockOverTwo();
  pass(250);
  read.wallMs += 10 * 60_000;
  // It comes round late.
  expect(pass(900)).toBe(10 * 60_000 + 1_150);
  await Promise.resolve();
  expect(moved).toEqual([{ kind: "slept", forMs: 10 * 60_000 + 900, nowMs: START_MS + 10 * 60_000 + 1_150 }]);
});

it.each([12_000, 10 * 60_000])("counts %d ms in which it was held still, and tells of it", async (heldMs) => {
  const { moved, pass } = clockOverTwo();
  expect(pass(heldMs)).toBe(heldMs);
  await Promise.resolve();
  expect(moved).toEqual([{ kind: "slept", forMs: heldMs, nowMs: START_MS + heldMs }]);
});

it("says nothing of a look that comes late from a page that had much to do", async () => {
  const { moved, pass } = clockOverTwo();
  expect(pass(9_000)).toBe(9_000);
  await Promise.resolve();
  expect(moved).toEqual([]);
});

it("follows a clock that was set back while it was held still, and tells of that", async () => {
  const { read, moved, pass } = clockOverTwo();
  read.wallMs -= HOUR_MS;
  expect(pass(60_000)).toBe(60_000);
  await Promise.resolve();
  expect(moved).toEqual([{ kind: "set", byMs: -HOUR_MS, nowMs: START_MS + 60_000 }]);
});

it("follows a clock that is steered by less than two seconds", async () => {
  const { read, moved, pass } = clockOverTwo();
  read.wallMs += 1_500;
  expect(pass(250)).toBe(1_750);
  await Promise.resolve();
  expect(moved).toEqual([]);
});

it("goes on behind the device's clock as the record says", () => {
  const { clock } = clockOverTwo();
  clock.align(HOUR_MS);
  expect(clock.nowMs()).toBe(START_MS - HOUR_MS);
});
