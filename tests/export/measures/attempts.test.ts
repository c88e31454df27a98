import { describe, expect, it } from "vitest";
import {
  selectAttemptMeasures,
  selectFirstPass,
  selectFirstPassWithoutLow,
} from "../../../src/export/measures/attempts.ts";
import type { Measured } from "../../../src/export/measures/measured.ts";
import { airway, built, given, type BuiltCase } from "./builtCase.ts";

const short = (measured: Measured<boolean>): boolean | string =>
  "value" in measured ? measured.value : measured.unknown;

/** Drugs at 10 min; values a minute before and two after. */
const induced = (b: BuiltCase, before: { sbp?: number; spo2?: number }, after: { sbp?: number; spo2?: number }) => {
  b.min(9).say(before);
  b.min(10).add(given("induction"), given("muscleRelaxant"));
  b.min(11).add(airway("bladeIn"));
  b.min(11.5).add(airway("tubeIn"));
  b.min(12).say(after);
};
const WELL = { sbp: 120, spo2: 98 };

// clinical.md §9: first attempt, no SpO2 under 90 %, no SBP under 90 (R23, R94): a value of 90 is not under it.
const ROWS: readonly (readonly [string, (b: BuiltCase) => unknown, boolean | string, boolean | string])[] = [
  ["nothing called", (b) => b.say(WELL), "no-attempt", "no-attempt"],
  ["low, and no attempt", (b) => (b.add(given("induction")), b.say({ sbp: 70 })), "no-attempt", "no-attempt"],
  ["an attempt that runs", (b) => b.add(airway("bladeIn")), "attempt-not-ended", "attempt-not-ended"],
  ["a tube that nobody proved", (b) => induced(b, WELL, WELL), "tube-not-proved", "tube-not-proved"],
  ["a tube that nobody proved, and low", (b) => induced(b, WELL, { sbp: 89 }), "tube-not-proved", false],
  ["CO2 proves it", (b) => (induced(b, WELL, WELL), b.say({ etco2: 38 })), true, true],
  ["called confirmed", (b) => (induced(b, WELL, WELL), b.add(airway("tubeConfirmed"))), true, true],
  ["at the limits", (b) => (induced(b, WELL, { sbp: 90, spo2: 90 }), b.add(airway("tubeConfirmed"))), true, true],
  ["systolic 89", (b) => (induced(b, WELL, { sbp: 89, spo2: 98 }), b.add(airway("tubeConfirmed"))), true, false],
  ["saturation 89", (b) => (induced(b, WELL, { sbp: 120, spo2: 89 }), b.add(airway("tubeConfirmed"))), true, false],
  ["low just before the drugs", (b) => (induced(b, { sbp: 85 }, WELL), b.add(airway("tubeConfirmed"))), true, false],
  [
    "no saturation since the drugs",
    (b) => (induced(b, WELL, { sbp: 120 }), b.add(airway("tubeConfirmed"))),
    true,
    "not-measured-since-induction",
  ],
  ["the second attempt", (b) => (b.add(airway("bladeIn"), airway("out")), induced(b, WELL, WELL)), false, false],
  ["the tube came out again", (b) => (induced(b, WELL, WELL), b.add(airway("tubeOut"))), false, false],
];

describe("the first attempt", () => {
  it.each(ROWS)("%s", (_name, build, firstPass, withoutLow) => {
    const recorded = built(build);
    expect(short(selectFirstPass(recorded))).toBe(firstPass);
    expect(short(selectFirstPassWithoutLow(recorded))).toBe(withoutLow);
  });
});

describe("attempts", () => {
  it("are counted and timed from blade to tube or out", () => {
    const recorded = built((b) => {
      b.at(600).add(airway("bladeIn"));
      b.at(645).add(airway("out"));
      b.at(700).add(airway("bladeIn"));
      b.at(731).add(airway("tubeIn"));
      b.at(740).add(airway("tubeConfirmed"));
    });
    expect(selectAttemptMeasures(recorded)).toEqual({
      value: [
        { number: 1, startedAtMs: { value: 600_000 }, lengthS: { value: 45 }, outcome: "out" },
        { number: 2, startedAtMs: { value: 700_000 }, lengthS: { value: 31 }, outcome: "confirmed" },
      ],
    });
  });

  it("have no length where their start or end was not called", () => {
    const implied = built((b) => {
      b.at(0).add(given("muscleRelaxant"));
      b.at(60).add(airway("tubeConfirmed"));
    });
    expect(selectAttemptMeasures(implied)).toEqual({
      value: [
        {
          number: 1,
          startedAtMs: { unknown: "start-not-called" },
          lengthS: { unknown: "start-not-called" },
          outcome: "confirmed",
        },
      ],
    });
    const running = selectAttemptMeasures(built((b) => b.add(airway("bladeIn"))));
    expect("value" in running && running.value[0]?.lengthS).toEqual({ unknown: "attempt-not-ended" });
  });

  it("are none where none was called", () => {
    expect(selectAttemptMeasures(built((b) => b.say(WELL)))).toEqual({ unknown: "no-attempt" });
  });
});
