import { describe, expect, it } from "vitest";
import { attemptLength, selectAirway } from "../../src/log/attempt.ts";
import { selectAttempts, selectFirstAttempt, selectInductionLows } from "../../src/log/attemptRecord.ts";
import type { AirwayEvent } from "../../src/log/careFacts.ts";
import type { NewFact } from "../../src/log/facts.ts";
import { defaultProtocol as protocol } from "../../src/protocol/defaultProtocol.ts";
import { CaseBuilder } from "./caseBuilder.ts";

const airway = (event: AirwayEvent): NewFact => ({ type: "airway.event", event, heard: "as said", by: "typed" });
const ROCURONIUM: NewFact = {
  type: "drug.given",
  drugId: "rocuronium",
  drugClass: "muscleRelaxant",
  amount: { value: 100, unit: "mg" },
  heard: "as said",
  by: "typed",
};

/** A case of calls at the airway, ten seconds apart. */
function called(...events: readonly AirwayEvent[]): CaseBuilder {
  const b = new CaseBuilder();
  events.forEach((event, i) => b.at(i * 10).add(airway(event)));
  return b;
}

/** "number outcome length" of each attempt, and the tube. */
function shown(b: CaseBuilder): string {
  const { attempts, tube } = selectAirway(b.state);
  const told = attempts.map((a) => `${a.number} ${a.outcome} ${attemptLength(a, b.nowMs) / 1000}`);
  return [...told, tube === undefined ? "no tube" : tube.confirmed ? "confirmed" : "tube"].join(", ");
}

const ROWS: readonly (readonly [readonly AirwayEvent[], string])[] = [
  [[], "no tube"],
  [["out"], "no tube"],
  [["bladeIn"], "1 running 0, no tube"],
  [["bladeIn", "out"], "1 out 10, no tube"],
  [["bladeIn", "bladeIn", "out"], "1 out 20, no tube"],
  [["bladeIn", "out", "out", "bladeIn"], "1 out 10, 2 running 0, no tube"],
  [["bladeIn", "tubeIn"], "1 tubeIn 10, tube"],
  [["bladeIn", "tubeIn", "out"], "1 tubeIn 10, tube"],
  [["bladeIn", "tubeIn", "tubeIn", "tubeConfirmed"], "1 confirmed 10, confirmed"],
  [["bladeIn", "tubeConfirmed"], "1 confirmed 10, confirmed"],
  [["tubeIn"], "1 tubeIn 0, tube"],
  [["tubeConfirmed"], "1 confirmed 0, confirmed"],
  [["bladeIn", "tubeIn", "tubeOut"], "1 tubeOut 10, no tube"],
  [["bladeIn", "tubeIn", "bladeIn"], "1 tubeOut 10, 2 running 0, no tube"],
  [["bladeIn", "tubeConfirmed", "tubeOut"], "1 confirmed 10, no tube"],
  [["bladeIn", "tubeConfirmed", "tubeOut", "tubeIn"], "1 confirmed 10, 2 tubeIn 0, tube"],
];

describe("attempts", () => {
  it.each(ROWS)("%j", (events, expected) => {
    expect(shown(called(...events))).toBe(expected);
  });

  it("begins with the apnoea where nobody called the blade", () => {
    const b = new CaseBuilder();
    b.at(20).add(ROCURONIUM);
    b.at(80).add(airway("tubeIn"));
    expect(shown(b)).toBe("1 tubeIn 60, tube");
    expect(selectAirway(b.state).attempts[0]?.implied).toBe(true);
  });

  it("takes the lowest values from two minutes before the blade to its end, and the fall since induction", () => {
    const b = new CaseBuilder();
    b.at(0).say({ spo2: 80, sbp: 70, map: 50 });
    b.at(100).say({ spo2: 99, sbp: 130, map: 95 });
    b.at(110).add(ROCURONIUM);
    b.at(200).add(airway("bladeIn"));
    b.at(220).say({ spo2: 91, sbp: 105, map: 76 });
    b.at(240).add(airway("out"));
    b.at(250).say({ spo2: 85, sbp: 95, map: 70 });
    const [record] = selectAttempts(b.state, protocol, b.nowMs);
    expect(record?.lowest).toEqual({ spo2Pct: 91, sbpMmHg: 105, mapMmHg: 76 });
    expect(record?.mapDrop).toEqual({ by: 19, pct: 20 });
    expect(selectInductionLows(b.state, protocol)).toEqual({ spo2Pct: 80, sbpMmHg: 70, mapMmHg: 50 });
  });

  const spo2 = protocol.targets.spo2Pct.critical.value;
  const sbp = protocol.lowPressure.publishedSbpFloorMmHg.value;
  const FIRST: readonly (readonly [string, (b: CaseBuilder) => void, string, string])[] = [
    ["no attempt", () => undefined, "unknown", "unknown"],
    ["running", (b) => void b.add(airway("bladeIn")), "unknown", "unknown"],
    ["no proof of the tube", (b) => void b.add(airway("bladeIn"), airway("tubeIn")), "unknown", "unknown"],
    ["out", (b) => void b.add(airway("bladeIn"), airway("out")), "no", "no"],
    ["a second one", (b) => void b.add(airway("bladeIn"), airway("out"), airway("tubeConfirmed")), "no", "no"],
    ["confirmed, nothing measured", (b) => void b.add(airway("bladeIn"), airway("tubeConfirmed")), "yes", "unknown"],
    [
      "CO2 proves it; values at the limits are not under them",
      (b) => {
        b.add(airway("bladeIn"), airway("tubeIn"));
        b.say({ etco2: 38, spo2, sbp });
      },
      "yes",
      "yes",
    ],
    [
      "nothing measured since the drugs went in",
      (b) => {
        b.at(0).say({ spo2, sbp });
        b.at(10).add(ROCURONIUM);
        b.at(60).add(airway("bladeIn"), airway("tubeConfirmed"));
      },
      "yes",
      "unknown",
    ],
    [
      "saturation under the limit",
      (b) => {
        b.add(airway("bladeIn"), airway("tubeConfirmed"));
        b.say({ spo2: spo2 - 1, sbp });
      },
      "yes",
      "no",
    ],
    [
      "systolic under the limit",
      (b) => {
        b.add(airway("bladeIn"), airway("tubeConfirmed"));
        b.say({ spo2, sbp: sbp - 1 });
      },
      "yes",
      "no",
    ],
    [
      "low before the window of the induction",
      (b) => {
        b.at(0).say({ spo2: spo2 - 5, sbp });
        b.at(121).add(airway("bladeIn"), airway("tubeConfirmed"));
        b.say({ spo2, sbp });
      },
      "yes",
      "yes",
    ],
  ];

  it.each(FIRST)("first attempt: %s", (_name, build, firstPass, withoutLow) => {
    const b = new CaseBuilder();
    build(b);
    expect(selectFirstAttempt(b.state, protocol)).toEqual({ firstPass, withoutLow });
  });
});
