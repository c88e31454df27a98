import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { EyeScore, GcsParts, MotorScore, VerbalScore } from "../../src/core/gcs.ts";
import { neuroChange, type NeuroExam, type NeuroLimits } from "../../src/core/neuroChange.ts";
import type { Pupil, PupilReaction } from "../../src/core/pupils.ts";
import { mmOf, scoreOf } from "./courseValues.ts";

const LIMITS: NeuroLimits = {
  gcsFall: { points: scoreOf(2), fromUnder: scoreOf(9) },
  pupilDifferenceMm: mmOf(1),
};
const UNCHANGED = {
  gcsFell: false,
  motorFell: false,
  pupilsNewlyUnequal: false,
  newlyFixed: [],
  fires: false,
  worse: false,
};

type Gcs = readonly [eye: EyeScore, verbal: VerbalScore | "T", motor: MotorScore | "NT" | "-"];
const gcsExam = ([eye, verbal, motor]: Gcs): NeuroExam => ({
  gcs: {
    eye,
    verbal: verbal === "T" ? "not-testable" : verbal,
    ...(motor === "-" ? {} : { motor: motor === "NT" ? "not-testable" : motor }),
  },
  pupils: {},
});

type GcsRow = readonly [
  name: string,
  before: Gcs,
  now: Gcs,
  gcsFell: boolean,
  motorFell: boolean,
  fires: boolean,
  worse: boolean,
];
// prettier-ignore
const GCS_ROWS: readonly GcsRow[] = [
  ["8 → 6", [2, 2, 4], [1, 1, 4], true, false, true, true],
  ["12 → 10 alone", [4, 3, 5], [3, 2, 5], false, false, false, true],
  ["12 → 10 by the motor part", [4, 3, 5], [4, 3, 3], false, true, true, true],
  ["8 → 7", [2, 2, 4], [2, 1, 4], false, false, false, true],
  ["9 → 7", [3, 2, 4], [2, 1, 4], false, false, false, true],
  ["9 → 6", [3, 3, 3], [2, 1, 3], false, false, false, true],
  ["8 → 8", [2, 2, 4], [2, 2, 4], false, false, false, false],
  ["8 → 8, the motor part down and the eye part up", [2, 2, 4], [3, 2, 3], false, true, true, true],
  ["6 → 8", [1, 1, 4], [2, 2, 4], false, false, false, false],
  ["motor up, total down", [4, 2, 2], [2, 1, 3], true, false, true, true],
  ["the tube came between", [2, 2, 4], [1, "T", 4], false, false, false, false],
  ["the tube was there before", [2, "T", 4], [1, 1, 4], false, false, false, false],
  ["motor down through the tube", [2, "T", 4], [1, "T", 3], false, true, true, true],
  ["motor not testable now", [2, 2, 4], [2, 2, "NT"], false, false, false, false],
  ["motor not testable before", [2, 2, "NT"], [2, 2, 1], false, false, false, false],
  ["motor not examined now", [2, 2, 4], [2, 2, "-"], false, false, false, false],
  ["motor not examined before", [2, 2, "-"], [2, 2, 1], false, false, false, false],
];

describe("Glasgow scale, by 2 from under 9", () => {
  it.each(GCS_ROWS)("%s", (_name, before, now, gcsFell, motorFell, fires, worse) => {
    const change = neuroChange(gcsExam(before), gcsExam(now), LIMITS);
    expect(change).toEqual({ ...UNCHANGED, gcsFell, motorFell, fires, worse });
  });
  it("follows the limits that it is given", () => {
    const lax = (points: number, fromUnder: number) => ({
      ...LIMITS,
      gcsFall: { points: scoreOf(points), fromUnder: scoreOf(fromUnder) },
    });
    const [twelve, ten] = [gcsExam([4, 3, 5]), gcsExam([3, 2, 5])];
    expect(neuroChange(twelve, ten, lax(2, 13)).gcsFell).toBe(true);
    expect(neuroChange(twelve, ten, lax(2, 12)).gcsFell).toBe(false);
    expect(neuroChange(twelve, ten, lax(3, 13)).gcsFell).toBe(false);
    expect(neuroChange(twelve, twelve, lax(0, 13)).gcsFell).toBe(false);
  });
});

type Sizes = readonly [left: number | undefined, right: number | undefined];
const pupilOf = (size: number | undefined): Pupil | undefined => (size === undefined ? size : { sizeMm: mmOf(size) });
const sizesExam = ([left, right]: Sizes): NeuroExam => ({
  gcs: {},
  pupils: { left: pupilOf(left), right: pupilOf(right) },
});
// prettier-ignore
const SIZE_ROWS: readonly (readonly [before: Sizes, now: Sizes, unequal: boolean])[] = [
  [[3, 3], [3, 5], true],
  [[3, 3], [5, 3], true],
  [[3, 3], [3, 4], false],
  [[3, 4], [3, 5], true],
  [[3, 5], [3, 6], false],
  [[5, 3], [3, 3], false],
  [[3, undefined], [3, 5], false],
  [[undefined, 3], [3, 5], false],
  [[3, 3], [undefined, 5], false],
  [[3, 3], [5, undefined], false],
];

describe("pupils more than 1 mm apart that were not before", () => {
  it.each(SIZE_ROWS)("%j → %j: %s", (before, now, unequal) => {
    const change = neuroChange(sizesExam(before), sizesExam(now), LIMITS);
    expect(change).toEqual({ ...UNCHANGED, pupilsNewlyUnequal: unequal, fires: unequal, worse: unequal });
  });
});

const FIXED_ROWS: readonly (readonly [name: string, before: Pupil | undefined, now: Pupil, fixed: boolean])[] = [
  ["reacted, now fixed", { reaction: "reactive" }, { reaction: "fixed" }, true],
  ["sluggish, now fixed", { reaction: "sluggish" }, { reaction: "fixed" }, true],
  ["only its size was said, now fixed", { sizeMm: mmOf(3) }, { reaction: "fixed" }, true],
  ["fixed all along", { reaction: "fixed" }, { reaction: "fixed" }, false],
  ["fixed all along, size said", { reaction: "fixed", sizeMm: mmOf(3) }, { reaction: "fixed", sizeMm: mmOf(3) }, false],
  ["not looked at before", undefined, { reaction: "fixed" }, false],
  ["nothing seen of it before", {}, { reaction: "fixed" }, false],
  ["reacts", { reaction: "brisk" }, { reaction: "brisk" }, false],
  ["reacts, slower", { reaction: "brisk" }, { reaction: "sluggish" }, false],
  ["reacts again", { reaction: "fixed" }, { reaction: "reactive" }, false],
  ["not said now", { reaction: "reactive" }, { sizeMm: mmOf(3) }, false],
];

describe("a pupil that became fixed", () => {
  it.each(FIXED_ROWS)("%s", (_name, before, now, fixed) => {
    for (const side of ["left", "right"] as const) {
      const first: NeuroExam = { gcs: {}, pupils: { [side]: before } };
      const second: NeuroExam = { gcs: {}, pupils: { [side]: now } };
      const newlyFixed = fixed ? [side] : [];
      expect(neuroChange(first, second, LIMITS)).toEqual({ ...UNCHANGED, newlyFixed, fires: fixed, worse: fixed });
    }
  });
  it("or two", () => {
    const both = (reaction: PupilReaction): NeuroExam => ({
      gcs: {},
      pupils: { left: { reaction }, right: { reaction } },
    });
    expect(neuroChange(both("reactive"), both("fixed"), LIMITS).newlyFixed).toEqual(["left", "right"]);
  });
  it("is not seen where nobody looked now", () => {
    const before: NeuroExam = { gcs: {}, pupils: { left: { reaction: "reactive" } } };
    expect(neuroChange(before, { gcs: {}, pupils: {} }, LIMITS)).toEqual(UNCHANGED);
  });
});

describe("properties", () => {
  const part = <T>(scores: readonly T[]) =>
    fc.constantFrom<T | "not-testable" | undefined>(...scores, "not-testable", undefined);
  const gcs: fc.Arbitrary<GcsParts> = fc.record({
    eye: part([1, 2, 3, 4] as const),
    verbal: part([1, 2, 3, 4, 5] as const),
    motor: part([1, 2, 3, 4, 5, 6] as const),
  });
  const pupil = fc.record({
    sizeMm: fc.constantFrom(undefined, ...[1, 2, 3, 4, 5, 6].map(mmOf)),
    reaction: fc.constantFrom<PupilReaction | undefined>(undefined, "reactive", "brisk", "sluggish", "fixed"),
  });
  const exam: fc.Arbitrary<NeuroExam> = fc.record({ gcs, pupils: fc.record({ left: pupil, right: pupil }) });
  it("the same examination twice is no change", () => {
    fc.assert(
      fc.property(exam, (same) => {
        expect(neuroChange(same, same, LIMITS)).toEqual(UNCHANGED);
      }),
    );
  });
  it("what got worse one way is not worse the other way, part by part", () => {
    fc.assert(
      fc.property(exam, exam, (before, now) => {
        const [there, back] = [neuroChange(before, now, LIMITS), neuroChange(now, before, LIMITS)];
        expect(there.gcsFell && back.gcsFell).toBe(false);
        expect(there.motorFell && back.motorFell).toBe(false);
        expect(there.pupilsNewlyUnequal && back.pupilsNewlyUnequal).toBe(false);
        expect(there.newlyFixed.filter((side) => back.newlyFixed.includes(side))).toEqual([]);
        if (there.fires) expect(there.worse).toBe(true);
      }),
    );
  });
  it("left and right are treated alike", () => {
    const mirrored = ({ gcs, pupils }: NeuroExam): NeuroExam => ({
      gcs,
      pupils: { left: pupils.right, right: pupils.left },
    });
    const summary = (before: NeuroExam, now: NeuroExam) => {
      const { newlyFixed, ...rest } = neuroChange(before, now, LIMITS);
      return { ...rest, fixed: newlyFixed.length };
    };
    fc.assert(
      fc.property(exam, exam, (before, now) => {
        expect(summary(mirrored(before), mirrored(now))).toEqual(summary(before, now));
      }),
    );
  });
});
