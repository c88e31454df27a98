import { describe, expect, it } from "vitest";
import { defaultProtocol } from "../../../src/protocol/defaultProtocol.ts";
import { standingAlerts } from "../../../src/rules/alerts/standing.ts";
import { Ward } from "./ward.ts";

// Limits are those of the built-in protocol for each age and cause, whose own sources stand beside them there.
const SINGLE: readonly [string, Parameters<Ward["patient"]>[0], Parameters<Ward["say"]>[0], readonly string[]][] = [
  ["sixty years, systolic at target", { ageA: 60 }, { sbp: 100 }, []],
  ["sixty years, systolic under target", { ageA: 60 }, { sbp: 99 }, ["sbpLow raised medium"]],
  ["sixty years, systolic at the high band's edge", { ageA: 60 }, { sbp: 90 }, ["sbpLow raised medium"]],
  ["sixty years, systolic in the high band", { ageA: 60 }, { sbp: 89 }, ["sbpLow raised high"]],
  ["forty nine years", { ageA: 49 }, { sbp: 109 }, ["sbpLow raised medium"]],
  ["fifty years", { ageA: 50 }, { sbp: 109 }, []],
  ["seventy years", { ageA: 70 }, { sbp: 109 }, ["sbpLow raised medium"]],
  ["six years, systolic at target: 90 + 2 × 6", { ageA: 6 }, { sbp: 102 }, []],
  ["six years, systolic under target", { ageA: 6 }, { sbp: 101 }, ["sbpLow raised medium"]],
  ["six years, systolic in the high band: 70 + 2 × 6", { ageA: 6 }, { sbp: 81 }, ["sbpLow raised high"]],
  ["six years, mean", { ageA: 6 }, { map: 64 }, ["mapLow raised medium"]],
  ["six years, perfusion", { ageA: 6 }, { map: 64, icp: 20 }, ["cppLow raised medium"]],
  ["six years, ICP over what is treated in a child", { ageA: 6 }, { map: 90, icp: 21 }, ["icpHigh raised medium"]],
  ["six years, heart rate of an adult", { ageA: 6 }, { hr: 65 }, ["hrLow raised medium"]],
  ["six years, heart rate that would be high in an adult", { ageA: 6 }, { hr: 145 }, []],
  ["a bleed asks for more", { cause: "bleed" }, { sbp: 129 }, ["sbpLow raised medium"]],
  ["a bleed, at its lower end", { cause: "bleed" }, { sbp: 130 }, []],
  ["a bleed, at its ceiling", { cause: "bleed" }, { sbp: 150 }, []],
  ["a bleed, over its ceiling", { cause: "bleed" }, { sbp: 151 }, ["sbpHigh raised medium"]],
  ["a bleed that herniates: its ceiling is suspended", { cause: "bleed", herniation: true }, { sbp: 190 }, []],
  ["an injury has no ceiling", { cause: "injury" }, { sbp: 190 }, []],
  ["a bleed in a child asks for no more than the age", { ageA: 6, cause: "bleed" }, { sbp: 102 }, []],
  ["saturation is the same for all", { ageA: 6 }, { spo2: 93 }, ["spo2Low raised medium"]],
];

describe("one reading of a patient who was described", () => {
  it.each(SINGLE)("%s", (_name, patient, values, heard) => {
    const ward = new Ward();
    ward.patient(patient);
    ward.say(values);
    expect(ward.heardNow()).toEqual(heard);
  });
});

describe("a patient who is described later", () => {
  it("a systolic of 95 alarms against 110, and no longer once the child is known to be two", () => {
    const ward = new Ward();
    ward.say({ sbp: 95 });
    expect(ward.heardNow()).toEqual(["sbpLow raised high"]);
    ward.at(5).patient({ ageA: 2 });
    expect(ward.heardNow()).toEqual([]);
    expect(ward.standing()).toEqual({});
  });
  it("an alert that still holds becomes milder without a word, and names the target of the age", () => {
    const ward = new Ward();
    ward.say({ sbp: 95 });
    ward.round();
    ward.at(5).patient({ ageA: 6 });
    expect(ward.heardNow()).toEqual([]);
    expect(standingAlerts(ward.state, defaultProtocol, 5000)).toMatchObject([
      { priority: "medium", body: { target: 102, beyond: 7 } },
    ]);
  });
  it("an age that is struck brings the alert back, aloud", () => {
    const ward = new Ward();
    ward.say({ sbp: 95 });
    const age = ward.patient({ ageA: 2 });
    expect(ward.heardNow()).toEqual([]);
    ward.strike(...age);
    expect(ward.heardNow()).toEqual(["sbpLow raised high"]);
  });
  it("a cause that asks for more raises what was on target before", () => {
    const ward = new Ward();
    ward.say({ sbp: 120 });
    expect(ward.heardNow()).toEqual([]);
    ward.patient({ cause: "bleed" });
    expect(ward.heardNow()).toEqual(["sbpLow raised medium"]);
    ward.patient({ cause: "injury" });
    expect(ward.heardNow()).toEqual([]);
    expect(ward.standing()).toEqual({});
  });
  it("herniation lifts the ceiling, not the floor", () => {
    const ward = new Ward();
    ward.patient({ cause: "bleed" });
    ward.say({ sbp: 125 });
    ward.round();
    ward.patient({ herniation: true });
    expect(ward.heardNow()).toEqual([]);
    expect(ward.standing()).toEqual({ sbpLow: "medium" });
  });
  it("an older reading holds the alert only if it was low by the limits that hold now", () => {
    const held = (first: number): Readonly<Record<string, string>> => {
      const ward = new Ward();
      ward.say({ sbp: first });
      ward.say({ sbp: 96 });
      ward.round();
      ward.patient({ ageA: 2 });
      ward.round();
      return ward.standing();
    };
    // Two years: target 94, cleared by two readings of 99 and more. 96 alone is too little to clear it.
    expect(held(93)).toEqual({ sbpLow: "medium" });
    expect(held(94)).toEqual({});
  });
});

describe("a protocol that was replaced", () => {
  it("clears what stands of alerts that the new one does not have", () => {
    const ward = new Ward();
    ward.say({ sbp: 95, spo2: 92 });
    ward.round();
    const without = new Ward({ ...defaultProtocol, alerts: defaultProtocol.alerts.filter((a) => a.id !== "sbpLow") });
    without.state = ward.state;
    expect(without.heardNow()).toEqual([]);
    expect(without.standing()).toEqual({ spo2Low: "medium" });
    const { length } = without.facts;
    without.round();
    expect(without.facts.length).toBe(length);
  });
});
