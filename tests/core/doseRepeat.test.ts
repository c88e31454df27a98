import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { repeatState } from "../../src/core/doseRepeat.ts";

const order = { repeatAfterS: { low: 60, high: 300 }, mostDoses: 3 };

describe("a repeated dose", () => {
  it("before the first", () => {
    expect(repeatState(order, [])).toEqual({ count: 0, mostReached: false, earliestNextAtMs: undefined });
  });
  it("counts from the latest, in any order", () => {
    const expected = { count: 2, mostReached: false, earliestNextAtMs: 10_000 + 60_000 };
    expect(repeatState(order, [4000, 10_000])).toEqual(expected);
    expect(repeatState(order, [10_000, 4000])).toEqual(expected);
  });
  it("ends with the most", () => {
    expect(repeatState(order, [1, 2, 3])).toEqual({ count: 3, mostReached: true, earliestNextAtMs: undefined });
    expect(repeatState(order, [1, 2, 3, 4])).toMatchObject({ count: 4, mostReached: true });
  });
  it("without an interval names no time", () => {
    expect(repeatState({ mostDoses: 2 }, [5])).toEqual({ count: 1, mostReached: false, earliestNextAtMs: undefined });
  });
  it("without a most never ends", () => {
    const many = Array.from({ length: 50 }, (_, i) => i);
    expect(repeatState({ repeatAfterS: order.repeatAfterS }, many)).toEqual({
      count: 50,
      mostReached: false,
      earliestNextAtMs: 49 + 60_000,
    });
  });
  it("the next is after every one given", () => {
    fc.assert(
      fc.property(fc.array(fc.integer(), { minLength: 1, maxLength: 2 }), (times) => {
        const { earliestNextAtMs } = repeatState(order, times);
        for (const atMs of times) expect(earliestNextAtMs).toBeGreaterThanOrEqual(atMs + 60_000);
      }),
    );
  });
});
