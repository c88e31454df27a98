import { describe, expect, it } from "vitest";
import { selectFloors, type BelowFloor, type FloorId } from "../../../src/export/measures/floors.ts";
import type { Measured } from "../../../src/export/measures/measured.ts";
import type { RecordedCase } from "../../../src/export/recordedCase.ts";
import { built, given, type BuiltCase } from "./builtCase.ts";

function floor(recorded: RecordedCase, id: FloorId): { floorMmHg: number; below: Measured<BelowFloor> } {
  const found = selectFloors(recorded).find((measure) => measure.id === id);
  if (found === undefined) throw new Error(id);
  return { floorMmHg: found.floor.value, below: found.below };
}

/** Half of the last digit that the row prints. */
const near = (below: Measured<BelowFloor>, expected: readonly [number, number, number]): void => {
  if (!("value" in below)) throw new Error(below.unknown);
  const { belowMin, doseMmHgMin, unknownMin } = below.value;
  [belowMin, doseMmHgMin, unknownMin].forEach((got, i) => {
    expect(Math.abs(got - (expected[i] ?? NaN))).toBeLessThanOrEqual(0.0005);
  });
};

const sbp = (...rows: readonly (readonly [number, number])[]) =>
  built((b) => rows.forEach(([minutes, value]) => b.min(minutes).say({ sbp: value })));

describe("published rows", () => {
  // clinical.md §3, worked test 1: triangle 10.0, trapezoid 90.0, triangle 33.333; 2 to 13.333 min.
  it("systolic under 90: 11.333 min, 133.333 mmHg·min", () => {
    const { floorMmHg, below } = floor(sbp([0, 100], [4, 80], [10, 70], [14, 94]), "sbpPublished");
    expect(floorMmHg).toBe(90);
    near(below, [11.333, 133.333, 0]);
  });

  // clinical.md §3, worked test 2: CPP 66, 56, 50, 64, here as MAP less an ICP of 20 in one breath; 3.000 to 13.571 min.
  it("perfusion pressure under 60: 10.571 min, 56.857 mmHg·min", () => {
    const rows = [
      [0, 86],
      [5, 76],
      [10, 70],
      [15, 84],
    ] as const;
    const recorded = built((b) => rows.forEach(([minutes, map]) => b.min(minutes).say({ map, icp: 20 })));
    const { floorMmHg, below } = floor(recorded, "cppTarget");
    expect(floorMmHg).toBe(60);
    near(below, [10.571, 56.857, 0]);
  });
});

// clinical.md §2.1 (SBP ≥ 110 at 15 to 49, ≥ 100 at 50 to 69, ≥ 110 over 70; MAP 90, CPP 60) and §2.2 (6 years).
describe("the floors of the patient", () => {
  it.each([
    [30, 110],
    [60, 100],
    [72, 110],
  ])("at %d years the systolic is held against %d", (ageA, expected) => {
    const recorded = built((b) => {
      b.min(0).say({ sbp: 120 });
      b.min(40).patient({ ageA });
    });
    expect(floor(recorded, "sbpTarget").floorMmHg).toBe(expected);
  });

  it("stay as they are while herniation is treated", () => {
    const ids: readonly FloorId[] = ["sbpTarget", "sbpPublished", "mapTarget", "cppTarget"];
    const floors = (herniation: boolean) =>
      ids.map(
        (id) =>
          floor(
            built((b) => b.patient({ ageA: 60, herniation })),
            id,
          ).floorMmHg,
      );
    expect(floors(true)).toEqual(floors(false));
    expect(floors(true)).toEqual([100, 90, 90, 60]);
  });
});

describe("what is not known", () => {
  const none = (id: FloorId, build: (b: BuiltCase) => unknown) => floor(built(build), id).below;

  it("is no number", () => {
    expect(none("sbpTarget", (b) => b.say({ spo2: 99 }))).toEqual({ unknown: "not-measured" });
    expect(none("mapTarget", (b) => b.say({ sbp: 80 }))).toEqual({ unknown: "not-measured" });
    expect(none("cppTarget", (b) => b.say({ map: 60 }))).toEqual({ unknown: "not-measured" });
    expect(none("sbpTarget", (b) => b.say({ sbp: 60 }))).toEqual({ unknown: "no-two-readings-near" });
  });

  // Readings at 2, 6, 20 and 24 min in a record of 0 to 30 min: known 4 + 4, so unknown 30 − 8 = 22, of which 14 are the gap
  // over 10 min (clinical.md §3, edge rules). 100 → 80 and 80 → 100: 2 min each under 90, depth 10 at the end: 0.5·10·2 twice.
  it("is told beside the dose: gaps, and the time before the first and after the last reading", () => {
    const recorded = built((b) => {
      b.min(0).say({ spo2: 97 });
      b.min(2).say({ sbp: 100 });
      b.min(6).say({ sbp: 80 });
      b.min(20).say({ sbp: 80 });
      b.min(24).say({ sbp: 100 });
      b.min(30).add(given("opioid"));
      b.min(300).add({ type: "alert.cleared", alertId: "sbpLow" });
    });
    near(floor(recorded, "sbpPublished").below, [4, 20, 22]);
  });
});

describe("mean and perfusion pressure", () => {
  // 90/60 → 70 and 120/75 → 90: straight from 20 under 90 to 0 in 5 min: 0.5·20·5 = 50.
  it("a mean comes from its pair where it was not measured", () => {
    const recorded = built((b) => {
      b.min(0).say({ sbp: 90, dbp: 60 });
      b.min(5).say({ sbp: 120, dbp: 75 });
    });
    near(floor(recorded, "mapTarget").below, [5, 50, 0]);
  });

  // At 0: 80 − 30 = 50. At 5 both change in one breath: 70 − 10 = 60; never 70 − 30. 0.5·10·5 = 25.
  it("a mean and an ICP of one breath make no pressure with what was before", () => {
    const recorded = built((b) => {
      b.min(0).say({ map: 80, icp: 30 });
      b.min(5).say({ map: 70, icp: 10 });
    });
    near(floor(recorded, "cppTarget").below, [5, 25, 0]);
  });

  // ICP at 0 goes with the mean of 4 min (50), not with that of 11 min, which is over 10 min later. Only one CPP: no time.
  it("an ICP that is too old makes no perfusion pressure", () => {
    const recorded = built((b) => {
      b.min(0).say({ icp: 30 });
      b.min(4).say({ map: 80 });
      b.min(11).say({ map: 80 });
    });
    expect(floor(recorded, "cppTarget").below).toEqual({ unknown: "no-two-readings-near" });
  });
});
