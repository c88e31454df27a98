import { describe, expect, it } from "vitest";
import { defaultProtocol as protocol } from "../../../src/protocol/defaultProtocol.ts";
import { standingAlerts } from "../../../src/rules/alerts/standing.ts";
import { watchIntervalS } from "../../../src/rules/watchInterval.ts";
import { Ward } from "./ward.ts";

const source = { heard: "as said", by: "typed" } as const;

describe("a low alert that nobody takes on", () => {
  it("counts for more after its time, aloud, and goes on to do so", () => {
    const ward = new Ward();
    ward.say({ hr: 125 });
    expect(ward.heardNow()).toEqual(["hrHigh raised low"]);
    expect(ward.at(179).heardNow()).toEqual([]);
    expect(ward.at(180).heardNow()).toEqual(["hrHigh worse medium"]);
    expect(ward.at(181).heardNow()).toEqual([]);
    expect(ward.standing()).toEqual({ hrHigh: "medium" });
  });
  it("does not while somebody has it, nor while its value is back", () => {
    const ward = new Ward();
    ward.say({ hr: 125 });
    ward.round();
    ward.has("hrHigh");
    expect(ward.at(600).heardNow()).toEqual([]);
    const back = new Ward();
    back.say({ hr: 125 });
    back.round();
    back.at(10).say({ hr: 118 });
    expect(back.at(600).heardNow()).toEqual([]);
    expect(back.standing()).toEqual({ hrHigh: "low" });
  });
});

describe("CO2 by phase", () => {
  it("by mask says nothing; the same number after the tube is an alert", () => {
    const ward = new Ward();
    ward.say({ etco2: 30 });
    ward.add({ type: "airway.event", event: "tubeIn", ...source });
    expect(ward.heardNow()).toEqual([]);
    ward.at(20).say({ etco2: 30 });
    expect(ward.heardNow()).toEqual(["etco2Low raised medium"]);
  });
  it("is judged by the lower band while herniation is treated, and by the usual one afterwards", () => {
    const ward = new Ward();
    ward.add({ type: "airway.event", event: "tubeConfirmed", ...source });
    ward.at(1).add({ type: "rescue.started", ...source });
    ward.at(2).say({ etco2: 32 });
    expect(ward.heardNow()).toEqual([]);
    ward.at(10).add({ type: "rescue.ended", ...source });
    expect(ward.heardNow()).toEqual(["etco2Low raised medium"]);
  });
  it("of a tube that comes out is gone with it", () => {
    const ward = new Ward();
    ward.add({ type: "airway.event", event: "tubeConfirmed", ...source });
    ward.at(1).say({ etco2: 20 });
    expect(ward.heardNow()).toEqual(["etco2Low raised high"]);
    ward.at(5).add({ type: "airway.event", event: "tubeOut", ...source });
    expect(ward.heardNow()).toEqual([]);
    expect(ward.standing()).toEqual({});
  });
});

describe("a value that falls towards its target", () => {
  // Every two minutes; the usual interval is five. 104, 100, 96: two a minute, so 90 in three.
  it("is called before it is there, with the time that is left", () => {
    const ward = new Ward();
    for (const [i, map] of [104, 100, 96].entries()) ward.at(i * 120).say({ map });
    expect(ward.heardNow()).toEqual(["mapLow:falling raised low"]);
    expect(standingAlerts(ward.state, protocol, ward.nowMs)).toMatchObject([
      { body: { kind: "falling", value: 96, target: 90, inMs: 180_000 }, priority: "low" },
    ]);
  });
  it("that crosses becomes the alert itself", () => {
    const ward = new Ward();
    for (const [i, map] of [104, 100, 96].entries()) ward.at(i * 120).say({ map });
    ward.round();
    ward.at(360).say({ map: 89 });
    expect(ward.heardNow()).toEqual(["mapLow raised medium"]);
    expect(ward.standing()).toEqual({ mapLow: "medium" });
  });
  it.each([
    ["slowly: it would take more than the interval", [104, 103, 101]],
    ["only by noise", [92, 92, 91]],
    ["and rises again", [104, 94, 96]],
    ["in two readings only", [104, 94]],
    ["not at all", [96, 96, 96]],
  ] as const)("falling %s is not called", (_how, maps) => {
    const ward = new Ward();
    for (const [i, map] of maps.entries()) ward.at(i * 120).say({ map });
    expect(ward.heardNow()).toEqual([]);
  });
  it("a fall that nobody followed up foretells nothing any more", () => {
    const ward = new Ward();
    for (const [i, map] of [104, 100, 96].entries()) ward.at(i * 120).say({ map });
    ward.round();
    ward.at(240 + 601).round();
    expect(ward.standing()).toEqual({});
  });
});

describe("signs of herniation", () => {
  it("stand until they are treated, called by name, or gone", () => {
    const ward = new Ward();
    ward.find({ code: "pupilLeft", finding: "fixed" });
    expect(ward.heardNow()).toEqual(["neuroSign raised high"]);
    ward.at(1).add({ type: "rescue.started", ...source });
    expect(ward.heardNow()).toEqual([]);
    expect(ward.standing()).toEqual({});
  });
  it("more of them are worse, whoever has the first", () => {
    const ward = new Ward();
    ward.find({ code: "pupilLeft", finding: "fixed" });
    ward.round();
    ward.has("neuroSign");
    ward.at(1).say({ gcsMotor: 1 });
    expect(ward.heardNow()).toEqual(["neuroSign worse high"]);
  });
  it("that somebody called need not be called back", () => {
    const ward = new Ward();
    ward.patient({ herniation: true });
    expect(ward.heardNow()).toEqual([]);
  });
});

describe("the device", () => {
  const text = "Record not saved. Write it down.";
  it("that cannot save is a high alert until it can", () => {
    const ward = new Ward();
    ward.devices = [{ kind: "recordNotSaved", sinceMs: 0, text }];
    expect(ward.heardNow()).toEqual(["recordNotSaved raised high"]);
    expect(ward.at(30).heardNow()).toEqual(["recordNotSaved again high louder"]);
    ward.devices = [];
    expect(ward.at(31).heardNow()).toEqual([]);
    expect(ward.standing()).toEqual({});
  });
  it("that does not hear takes no place of the patient's alerts, and asks for no more readings", () => {
    const ward = new Ward();
    ward.add({ type: "phase.entered", phase: "watch", ...source });
    for (let i = 0; i < 3; i++) ward.at(i * 60).say({ sbp: 125, dbp: 80, hr: 80, spo2: 98, etco2: 38 });
    const calm = watchIntervalS(ward.state, protocol);
    ward.devices = [{ kind: "microphoneLost", sinceMs: 0, text: "Microphone lost." }];
    expect(ward.heardNow()).toEqual(["microphoneLost raised medium"]);
    expect(calm).toBeGreaterThan(protocol.timers.watch.shortestS.value);
    expect(watchIntervalS(ward.state, protocol)).toBe(calm);
  });
  it("that does not hear is a medium one, which can be acknowledged", () => {
    const ward = new Ward();
    ward.devices = [{ kind: "microphoneLost", sinceMs: 0, text: "Microphone lost." }];
    expect(ward.heardNow()).toEqual(["microphoneLost raised medium"]);
    ward.has("microphoneLost");
    expect(ward.at(600).heardNow()).toEqual([]);
  });
});

describe("a number that was struck out", () => {
  it("takes its alert back, which the record says", () => {
    const ward = new Ward();
    const wrong = ward.say({ map: 60 });
    ward.round();
    ward.strike(...wrong);
    ward.say({ map: 96 });
    expect(ward.heardNow()).toEqual([]);
    expect(ward.facts.findLast(({ type }) => type === "alert.cleared")).toMatchObject({
      alertId: "mapLow",
      withdrawn: true,
    });
  });
  it("is said anew with the right one, where that is an alert too", () => {
    const ward = new Ward();
    const wrong = ward.say({ map: 60 });
    ward.round();
    ward.strike(...wrong);
    ward.say({ map: 68 });
    expect(ward.heardNow()).toEqual(["mapLow raised high"]);
  });
  it("of something else changes nothing", () => {
    const ward = new Ward();
    ward.say({ map: 85 });
    ward.round();
    ward.at(1).say({ map: 84 });
    const other = ward.say({ glucose: 7 });
    ward.round();
    ward.strike(...other);
    expect(ward.heardNow()).toEqual([]);
  });
});
