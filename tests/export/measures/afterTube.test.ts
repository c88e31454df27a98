import { describe, expect, it } from "vitest";
import { selectOverVentilation } from "../../../src/export/measures/overVentilation.ts";
import { selectPostIntubation } from "../../../src/export/measures/postIntubation.ts";
import { selectSedationMin } from "../../../src/export/measures/sedation.ts";
import { airway, announced, built, given, infusion, type BuiltCase } from "./builtCase.ts";

type Row = readonly [string, (b: BuiltCase) => unknown, unknown];
const tubeAt = (b: BuiltCase, minutes: number) => b.min(minutes).add(airway("bladeIn"), airway("tubeConfirmed"));

describe("from the tube to sedation", () => {
  const ROWS: readonly Row[] = [
    ["no tube", (b) => b.add(given("induction")), { unknown: "tube-not-proved" }],
    [
      "none",
      (b) => (b.add(given("induction")), tubeAt(b, 1), b.min(9).add(given("opioid"))),
      { unknown: "no-sedation" },
    ],
    ["given at once", (b) => (tubeAt(b, 10), b.min(14.5).add(given("benzodiazepine"))), { value: 4.5 }],
    ["an infusion", (b) => (tubeAt(b, 10), b.min(13).add(infusion("induction", 200))), { value: 3 }],
    [
      "one that is stopped is none",
      (b) => (tubeAt(b, 10), b.min(13).add(infusion("induction", 0))),
      { unknown: "no-sedation" },
    ],
    ["one that ran before", (b) => (b.min(2).add(infusion("induction", 200)), tubeAt(b, 10)), { value: 0 }],
    [
      "one that ran before and was stopped",
      (b) => {
        b.min(2).add(infusion("induction", 200));
        b.min(3).add(infusion("induction", 0));
        tubeAt(b, 10);
        b.min(16).add(infusion("induction", 100));
      },
      { value: 6 },
    ],
    [
      "from the first CO2 where nobody called it confirmed",
      (b) => {
        b.min(10).add(airway("tubeIn"));
        b.min(11).say({ etco2: 38 });
        b.min(12).add(airway("tubeConfirmed"));
        b.min(15).add(given("induction"));
      },
      { value: 4 },
    ],
    [
      "a step answered without a drug has no time",
      (b) => (tubeAt(b, 10), b.min(12).answer("sedationRunning", "done")),
      { unknown: "no-sedation" },
    ],
  ];
  it.each(ROWS)("%s", (_name, build, expected) => expect(selectSedationMin(built(build))).toEqual(expected));
});

// The bands of clinical.md §2.3: 35 to 45, and 30 to 35 while herniation is treated.
describe("over-ventilation", () => {
  const co2 = (b: BuiltCase, ...rows: readonly (readonly [number, number])[]) =>
    rows.forEach(([minutes, etco2]) => b.min(minutes).say({ etco2 }));
  const ROWS: readonly Row[] = [
    ["no tube", (b) => co2(b, [0, 20], [5, 20]), { unknown: "tube-not-proved" }],
    ["no CO2", (b) => tubeAt(b, 0), { unknown: "not-measured" }],
    ["one CO2", (b) => (tubeAt(b, 0), co2(b, [1, 20])), { unknown: "no-two-readings-near" }],
    [
      "in the band, its end included",
      (b) => (tubeAt(b, 0), co2(b, [0, 35], [10, 45])),
      { value: { belowMin: 0, unknownMin: 0 } },
    ],
    // 36 → 32 in 4 min meets 35 at 1 min: 3 min under it. 32 → 38 in 6 min meets it after 3 min: 3 + 3.
    ["a dip", (b) => (tubeAt(b, 0), co2(b, [0, 36], [4, 32], [10, 38])), { value: { belowMin: 6, unknownMin: 0 } }],
    [
      "what came before the tube is the patient's own",
      (b) => (co2(b, [0, 20], [4, 20]), tubeAt(b, 5), co2(b, [5, 38], [7, 38])),
      { value: { belowMin: 0, unknownMin: 0 } },
    ],
    // The lower band from 4 min on: only the first 4 of the 10 min at 33 are too low.
    [
      "herniation lowers the band from then on",
      (b) => {
        tubeAt(b, 0);
        co2(b, [0, 33]);
        b.min(4).patient({ herniation: true });
        co2(b, [10, 33]);
      },
      { value: { belowMin: 4, unknownMin: 0 } },
    ],
    [
      "under the lower band too",
      (b) => (b.patient({ herniation: true }), tubeAt(b, 0), co2(b, [0, 28], [10, 28])),
      { value: { belowMin: 10, unknownMin: 0 } },
    ],
    // 0 to 4 under the usual band, 4 to 8 within the lower one, whose time is then called over: 8 to 10 under the usual one.
    [
      "until the time of the measures is called over, whatever was struck before",
      (b) => {
        b.strike(...b.say({ etco2: 50 }));
        tubeAt(b, 0);
        co2(b, [0, 33]);
        b.min(4).patient({ herniation: true });
        b.min(8).add(announced("rescueOver", String(b.state.herniation?.seq)));
        co2(b, [10, 33]);
      },
      { value: { belowMin: 6, unknownMin: 0 } },
    ],
    [
      "herniation that was struck out lowers nothing",
      (b) => {
        tubeAt(b, 0);
        co2(b, [0, 33]);
        b.min(4).strike(...b.patient({ herniation: true }));
        co2(b, [10, 33]);
      },
      { value: { belowMin: 10, unknownMin: 0 } },
    ],
    // The gap of 16 min is over 10: a change of the band within it makes no shorter ones of it. Known 2 + 2 of 20 min.
    [
      "a gap stays a gap",
      (b) => {
        tubeAt(b, 0);
        co2(b, [0, 33], [2, 33]);
        b.min(10).patient({ herniation: true });
        co2(b, [18, 33], [20, 33]);
      },
      { value: { belowMin: 2, unknownMin: 16 } },
    ],
    // A tube in the gullet gives little CO2; it was never called confirmed and came out. The next: 38 throughout.
    [
      "a tube that came out unconfirmed is left out",
      (b) => {
        b.min(0).add(airway("bladeIn"), airway("tubeIn"));
        co2(b, [0, 8], [1, 6]);
        b.min(1).add(airway("tubeOut"));
        tubeAt(b, 3);
        co2(b, [3, 38], [6, 38]);
      },
      { value: { belowMin: 0, unknownMin: 0 } },
    ],
  ];
  it.each(ROWS)("%s", (_name, build, expected) => expect(selectOverVentilation(built(build))).toEqual(expected));
});

// clinical.md §9 (R18): any SBP under 90 within 60 min. Who was counted is in the abstract of that paper: over 17 years, and
// no systolic under 90 for 30 minutes on end before.
describe("hypotension after intubation", () => {
  const adult = (b: BuiltCase, sbpBefore = 120) => {
    b.min(0).patient({ ageA: 40 });
    b.min(28).say({ sbp: sbpBefore });
    tubeAt(b, 30);
  };
  const sbp = (b: BuiltCase, ...rows: readonly (readonly [number, number])[]) =>
    rows.forEach(([minutes, value]) => b.min(minutes).say({ sbp: value }));
  const every5 = (value: number) => Array.from({ length: 13 }, (_, i) => [30 + i * 5, value] as const);
  const ROWS: readonly Row[] = [
    ["no tube", (b) => b.say({ sbp: 80 }), { unknown: "tube-not-proved" }],
    ["no age", (b) => (b.say({ sbp: 120 }), tubeAt(b, 1)), { unknown: "no-age" }],
    ["17 years", (b) => (b.patient({ ageA: 17 }), tubeAt(b, 1)), { unknown: "not-adult" }],
    ["18 years", (b) => (b.patient({ ageA: 18 }), tubeAt(b, 1)), { unknown: "no-pressure-before" }],
    ["nothing after", (b) => adult(b), { unknown: "not-measured" }],
    // 28 to 34 lies 4 min within the hour, 34 to 50 is a gap.
    [
      "89 at 20 min",
      (b) => (adult(b), sbp(b, [34, 120], [50, 89])),
      { value: { low: true, watchedMin: 4, ofMin: 60 } },
    ],
    ["never under 90", (b) => (adult(b), sbp(b, ...every5(90))), { value: { low: false, watchedMin: 60, ofMin: 60 } }],
    // Watched from the tube at 30 to 32: the record ends there.
    [
      "watched for two minutes",
      (b) => (adult(b), sbp(b, [32, 100])),
      { value: { low: false, watchedMin: 2, ofMin: 60 } },
    ],
    [
      "after the hour",
      (b) => (adult(b), sbp(b, ...every5(95), [90.1, 70])),
      { value: { low: false, watchedMin: 60, ofMin: 60 } },
    ],
  ];
  it.each(ROWS)("%s", (_name, build, expected) => expect(selectPostIntubation(built(build))).toEqual(expected));

  it.each([
    [29, { value: { low: true, watchedMin: 1, ofMin: 60 } }],
    [30, { unknown: "low-before" }],
  ])("low for %d min on end before", (lengthMin, expected) => {
    const recorded = built((b) => {
      b.min(0).patient({ ageA: 40 });
      sbp(b, [0, 85], [10, 89], [20, 80], [lengthMin, 85]);
      tubeAt(b, 30);
      sbp(b, [31, 85]);
    });
    expect(selectPostIntubation(recorded)).toEqual(expected);
  });
});
