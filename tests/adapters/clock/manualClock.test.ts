import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createManualClock } from "../../../src/adapters/clock/manualClock.ts";

describe("a manual clock", () => {
  it("stands where it was put", () => {
    expect(createManualClock(5_000).nowMs()).toBe(5_000);
  });

  it("ticks on the way, each tick at its own time", () => {
    const clock = createManualClock(0);
    const seen: [string, number][] = [];
    clock.every(1_000, () => seen.push(["second", clock.nowMs()]));
    clock.every(1_500, () => seen.push(["longer", clock.nowMs()]));
    clock.advanceTo(3_100);
    expect(seen).toEqual([
      ["second", 1_000],
      ["longer", 1_500],
      ["second", 2_000],
      ["second", 3_000],
      ["longer", 3_000],
    ]);
    expect(clock.nowMs()).toBe(3_100);
  });

  it("ticks no more once stopped, even when stopped by a tick", () => {
    const clock = createManualClock(0);
    let ticks = 0;
    const stop = clock.every(10, () => {
      ticks++;
      if (ticks === 2) stop();
    });
    clock.advanceTo(1_000);
    expect(ticks).toBe(2);
  });

  it("refuses to go back, and does not move", () => {
    const clock = createManualClock(5_000);
    expect(clock.advanceTo(4_999)).toEqual({ ok: false, error: { kind: "backwards", nowMs: 5_000, askedMs: 4_999 } });
    expect(clock.nowMs()).toBe(5_000);
  });

  it("ticks as often in many small moves as in one", () => {
    fc.assert(
      fc.property(fc.array(fc.nat(500), { maxLength: 30 }), fc.integer({ min: 1, max: 200 }), (movesMs, periodMs) => {
        const clock = createManualClock(0);
        let ticks = 0;
        clock.every(periodMs, () => ticks++);
        for (const moveMs of movesMs) clock.advanceTo(clock.nowMs() + moveMs);
        expect(ticks).toBe(Math.floor(clock.nowMs() / periodMs));
      }),
    );
  });
});
