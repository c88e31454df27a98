import { describe, expect, it } from "vitest";
import type { DrugClass } from "../../../src/protocol/protocol.ts";
import { defaultProtocol as protocol } from "../../../src/protocol/defaultProtocol.ts";
import { placeOf } from "../../../src/log/steps/lists.ts";
import { isClosed } from "../../../src/log/steps/openSteps.ts";
import { CaseBuilder } from "../caseBuilder.ts";

const SAID = { heard: "as said", by: "typed" } as const;
const PREOXYGENATE_S = protocol.oxygen.preoxygenateS.value;
const STALE_S = protocol.timers.staleAfterS.value;

const given = (c: CaseBuilder, drugId: string, drugClass: DrugClass) =>
  c.add({ type: "drug.given", drugId, drugClass, amount: { value: 1, unit: "mg" }, ...SAID });
const affirmed = (c: CaseBuilder, drugId: string, drugClass: DrugClass, volumeMl = 1) =>
  c.add({
    type: "strength.affirmed",
    drugId,
    drugClass,
    strength: { amount: 1, unit: "mg", volumeMl },
    ...SAID,
  });
const infuses = (c: CaseBuilder, drugClass: DrugClass, value: number) =>
  c.add({ type: "infusion.set", drugId: "noradrenaline", drugClass, rate: { value, unit: "mL/h" }, ...SAID });
const airway = (c: CaseBuilder, event: "tubeIn" | "tubeConfirmed" | "tubeOut") =>
  c.add({ type: "airway.event", event, ...SAID });
const oxygen = (c: CaseBuilder, type: "clock.started" | "clock.stopped") =>
  c.add({ type, clock: "preoxygenation", ...SAID });
const exam = (c: CaseBuilder) => c.say({ gcsEye: 1, gcsMotor: 4, pupilLeft: 3, pupilRight: 3 });

function closed(c: CaseBuilder, stepId: string): boolean {
  const place = placeOf(protocol, stepId);
  if (place === undefined) throw new Error(`no step ${stepId}`);
  return isClosed(c.state, protocol, place, c.nowMs);
}

type Row = readonly [name: string, stepId: string, play: (c: CaseBuilder) => unknown, closed: boolean];

const ROWS: readonly Row[] = [
  ["a mean at its target", "meanPressure", (c) => c.say({ map: 90 }), true],
  ["a mean under it", "meanPressure", (c) => c.say({ map: 89 }), false],
  ["a mean at its target that is as old as may be", "meanPressure", (c) => (c.say({ map: 90 }), c.at(STALE_S)), true],
  ["a mean grown old", "meanPressure", (c) => (c.say({ map: 90 }), c.at(STALE_S + 1)), false],
  ["an exam before the paralysis", "neuroExam", (c) => (exam(c), given(c, "rocuronium", "muscleRelaxant")), true],
  ["an exam after it", "neuroExam", (c) => (given(c, "rocuronium", "muscleRelaxant"), exam(c)), false],
  [
    "an exam between two doses",
    "neuroExam",
    (c) => (
      given(c, "rocuronium", "muscleRelaxant"),
      exam(c),
      given(c, "suxamethonium", "muscleRelaxant"),
      given(c, "rocuronium", "muscleRelaxant")
    ),
    false,
  ],
  ["an exam after the induction drug alone", "neuroExam", (c) => (given(c, "ketamine", "induction"), exam(c)), true],
  [
    "the paralysis was said by mistake",
    "neuroExam",
    (c) => {
      const mistaken = given(c, "rocuronium", "muscleRelaxant");
      exam(c);
      c.strike(...mistaken);
    },
    true,
  ],
  [
    "an exam before, and one after it that counts no less",
    "neuroExam",
    (c) => (exam(c), given(c, "rocuronium", "muscleRelaxant"), exam(c)),
    true,
  ],
  ["oxygen for its time", "preoxygenation", (c) => (oxygen(c, "clock.started"), c.at(PREOXYGENATE_S)), true],
  ["oxygen a second less", "preoxygenation", (c) => (oxygen(c, "clock.started"), c.at(PREOXYGENATE_S - 1)), false],
  [
    "oxygen said to run twice counts from the first",
    "preoxygenation",
    (c) => (oxygen(c, "clock.started"), c.at(60), oxygen(c, "clock.started"), c.at(PREOXYGENATE_S)),
    true,
  ],
  [
    "oxygen taken off before the paralysis",
    "preoxygenation",
    (c) => (oxygen(c, "clock.started"), c.at(PREOXYGENATE_S), oxygen(c, "clock.stopped")),
    false,
  ],
  [
    "oxygen taken off for the attempt",
    "preoxygenation",
    (c) => (
      oxygen(c, "clock.started"),
      c.at(PREOXYGENATE_S),
      given(c, "rocuronium", "muscleRelaxant"),
      oxygen(c, "clock.stopped"),
      c.at(2000)
    ),
    true,
  ],
  [
    "oxygen taken off for the attempt too early",
    "preoxygenation",
    (c) => (
      oxygen(c, "clock.started"),
      c.at(PREOXYGENATE_S - 1),
      given(c, "rocuronium", "muscleRelaxant"),
      oxygen(c, "clock.stopped"),
      c.at(2000)
    ),
    false,
  ],
  ["a pressor's strength affirmed", "pushDose", (c) => affirmed(c, "phenylephrine", "vasopressor"), true],
  ["a bag of pressor", "pushDose", (c) => affirmed(c, "phenylephrine", "vasopressor", 250), false],
  ["a pressor that is only infused", "pushDose", (c) => affirmed(c, "vasopressin", "vasopressor", 50), false],
  [
    "a syringe, and then a bag of the same",
    "pushDose",
    (c) => (affirmed(c, "phenylephrine", "vasopressor", 10), affirmed(c, "phenylephrine", "vasopressor", 250)),
    true,
  ],
  ["fluid given", "fluid", (c) => c.add({ type: "fluid.given", fluidId: "blood", volumeMl: 250, ...SAID }), true],
  [
    "fluid struck",
    "fluid",
    (c) => c.strike(...c.add({ type: "fluid.given", fluidId: "blood", volumeMl: 250, ...SAID })),
    false,
  ],
  ["another drug's strength affirmed", "pushDose", (c) => affirmed(c, "ketamine", "induction"), false],
  ["a strength struck", "inductionDrug", (c) => c.strike(...affirmed(c, "ketamine", "induction")), false],
  ["a pressor running", "pressorInfusion", (c) => infuses(c, "vasopressor", 5), true],
  ["a pressor stopped", "pressorInfusion", (c) => (infuses(c, "vasopressor", 5), infuses(c, "vasopressor", 0)), false],
  ["another infusion", "pressorInfusion", (c) => infuses(c, "induction", 5), false],
  ["the tube confirmed by word", "traceSustained", (c) => airway(c, "tubeConfirmed"), true],
  ["the tube in, no CO2 yet", "traceSustained", (c) => airway(c, "tubeIn"), false],
  ["the tube confirmed by the first CO2", "traceSustained", (c) => (airway(c, "tubeIn"), c.say({ etco2: 38 })), true],
  [
    "the CO2 that confirmed it struck",
    "traceSustained",
    (c) => {
      airway(c, "tubeIn");
      c.strike(...c.say({ etco2: 38 }));
    },
    false,
  ],
  [
    "the tube out again",
    "traceSustained",
    (c) => (airway(c, "tubeIn"), c.say({ etco2: 38 }), airway(c, "tubeOut")),
    false,
  ],
  ["CO2 in its band since the tube", "carbonDioxide", (c) => (airway(c, "tubeIn"), c.say({ etco2: 38 })), true],
  ["CO2 in its band before the tube", "carbonDioxide", (c) => (c.say({ etco2: 38 }), airway(c, "tubeIn")), false],
  ["CO2 over its band", "carbonDioxide", (c) => (airway(c, "tubeIn"), c.say({ etco2: 46 })), false],
  [
    "CO2 under the usual band, in that of herniation",
    "carbonDioxide",
    (c) => (c.patient({ herniation: true }), airway(c, "tubeIn"), c.say({ etco2: 31 })),
    true,
  ],
  ["CO2 in that band without herniation", "carbonDioxide", (c) => (airway(c, "tubeIn"), c.say({ etco2: 31 })), false],
  ["CO2 grown old", "carbonDioxide", (c) => (airway(c, "tubeIn"), c.say({ etco2: 38 }), c.at(STALE_S + 1)), false],
  [
    "pupils since the tube",
    "pupilsAgain",
    (c) => (airway(c, "tubeIn"), c.say({ pupilLeft: 3 }), c.find({ code: "pupilRight", finding: "fixed" })),
    true,
  ],
  [
    "one pupil from before the tube",
    "pupilsAgain",
    (c) => (c.say({ pupilLeft: 3 }), airway(c, "tubeIn"), c.say({ pupilRight: 3 })),
    false,
  ],
  [
    "pupils since a tube that came out",
    "pupilsAgain",
    (c) => (
      airway(c, "tubeIn"),
      c.say({ pupilLeft: 3, pupilRight: 3 }),
      airway(c, "tubeOut"),
      airway(c, "tubeIn"),
      airway(c, "tubeConfirmed")
    ),
    false,
  ],
  [
    "a temperature since the tube that only the phase tells of",
    "temperatureNow",
    (c) => (c.add({ type: "phase.entered", phase: "settle", ...SAID }), c.say({ temp: 36 })),
    true,
  ],
];

describe("what the record answers", () => {
  it.each(ROWS)("%s: %s", (_name, stepId, play, expected) => {
    const c = new CaseBuilder();
    play(c);
    expect(closed(c, stepId)).toBe(expected);
  });

  it("an exam that came too late is closed once it is waived", () => {
    const c = new CaseBuilder();
    given(c, "rocuronium", "muscleRelaxant");
    exam(c);
    c.answer("neuroExam", "waived");
    expect(closed(c, "neuroExam")).toBe(true);
  });
});
