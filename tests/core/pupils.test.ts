import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pupilDifference, pupilReactivityScore, pupilsUnequal, type PupilReaction } from "../../src/core/pupils.ts";
import type { Mm } from "../../src/core/quantity.ts";

const mm = (n: number): Mm => n as Mm;
const sized = (left?: number, right?: number) => ({
  left: left === undefined ? undefined : { sizeMm: mm(left) },
  right: right === undefined ? undefined : { sizeMm: mm(right) },
});

describe("size", () => {
  it("3 and 5 differ by 2, whichever is left", () => {
    expect(pupilDifference(mm(3), mm(5))).toBe(2);
    expect(pupilDifference(mm(5), mm(3))).toBe(2);
  });
  it.each([
    [3, 5, 1, true],
    [5, 3, 1, true],
    [3, 4, 1, false],
    [3, 4.1, 1, true],
    [3, 3, 1, false],
    [3, 5, 2, false],
  ])("%d and %d with limit %d: %s", (left, right, limit, unequal) => {
    expect(pupilsUnequal(sized(left, right), limit)).toBe(unequal);
  });
  it("tenths of a millimetre that binary numbers cannot hold change nothing", () => {
    expect(2.2 - 1.2).toBeGreaterThan(1);
    expect(pupilsUnequal(sized(2.2, 1.2), 1)).toBe(false);
  });
  it.each([[sized(3)], [sized(undefined, 3)], [sized()], [{}], [{ left: { sizeMm: mm(3) }, right: {} }]])(
    "nothing is said of %j",
    (pupils) => {
      expect(pupilsUnequal(pupils, 1)).toBeUndefined();
    },
  );
  it("is the same from either side and never negative", () => {
    const size = fc.double({ min: 1, max: 9, noNaN: true });
    fc.assert(
      fc.property(size, size, (a, b) => {
        expect(pupilDifference(mm(a), mm(b))).toBe(pupilDifference(mm(b), mm(a)));
        expect(pupilDifference(mm(a), mm(b))).toBeGreaterThanOrEqual(0);
        expect(pupilsUnequal(sized(a, b), 1)).toBe(pupilsUnequal(sized(b, a), 1));
      }),
    );
  });
});

describe("reactivity score", () => {
  const reacts = (left?: PupilReaction, right?: PupilReaction) => ({
    left: { reaction: left },
    right: { reaction: right },
  });
  it.each([
    ["fixed", "fixed", 2],
    ["fixed", "sluggish", 1],
    ["brisk", "fixed", 1],
    ["reactive", "sluggish", 0],
  ] as const)("%s and %s is %d", (left, right, score) => {
    expect(pupilReactivityScore(reacts(left, right))).toEqual({ ok: true, value: score });
  });
  const unknown = (...sides: string[]) => ({ ok: false, error: { kind: "reaction-unknown", sides } });
  it("names the side that was not examined", () => {
    expect(pupilReactivityScore(reacts("fixed"))).toEqual(unknown("right"));
    expect(pupilReactivityScore(reacts(undefined, "fixed"))).toEqual(unknown("left"));
    expect(pupilReactivityScore({})).toEqual(unknown("left", "right"));
    expect(pupilReactivityScore(sized(7, 7))).toEqual(unknown("left", "right"));
  });
});
