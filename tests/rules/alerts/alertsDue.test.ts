import { describe, expect, it } from "vitest";
import { defaultProtocol as protocol } from "../../../src/protocol/defaultProtocol.ts";
import { alertsDue } from "../../../src/rules/alerts/alertsDue.ts";
import { standingAlerts } from "../../../src/rules/alerts/standing.ts";
import { Ward } from "./ward.ts";

// Thresholds are those of the built-in protocol, whose own sources stand beside them there.
const SINGLE: readonly [string, Parameters<Ward["say"]>[0], readonly string[]][] = [
  ["systolic at target", { sbp: 110 }, []],
  ["systolic just under target", { sbp: 109 }, ["sbpLow raised medium"]],
  ["systolic at the high band's edge", { sbp: 100 }, ["sbpLow raised medium"]],
  ["systolic in the high band", { sbp: 99 }, ["sbpLow raised high"]],
  ["mean at target", { map: 90 }, []],
  ["mean under target", { map: 89 }, ["mapLow raised medium"]],
  ["mean far under target", { map: 79 }, ["mapLow raised high"]],
  ["a computed mean counts", { sbp: 110, dbp: 60 }, ["mapLow raised high"]],
  ["saturation at target", { spo2: 94 }, []],
  ["saturation under target", { spo2: 93 }, ["spo2Low raised medium"]],
  ["saturation ninety is high: the edge is inside", { spo2: 90 }, ["spo2Low raised high"]],
  ["perfusion at target", { map: 82, icp: 22 }, ["mapLow raised medium"]],
  ["perfusion under target", { map: 81, icp: 22 }, ["cppLow raised medium"]],
  ["perfusion far under target", { map: 71, icp: 22 }, ["cppLow raised high"]],
  ["ICP at the limit of treatment", { map: 95, icp: 22 }, []],
  ["ICP over the limit of treatment", { map: 95, icp: 23 }, ["icpHigh raised medium"]],
  ["no ICP, no perfusion alert", { map: 95 }, []],
  ["heart rate at its limits", { hr: 50 }, []],
  ["heart rate low", { hr: 49 }, ["hrLow raised medium"]],
  ["heart rate very low", { hr: 39 }, ["hrLow raised high"]],
  ["heart rate high", { hr: 121 }, ["hrHigh raised low"]],
  ["heart rate very high", { hr: 151 }, ["hrHigh raised medium"]],
  ["temperature in its range", { temp: 37.9 }, []],
  ["temperature treated from here", { temp: 38 }, ["tempHigh raised low"]],
  ["temperature well over", { temp: 39.1 }, ["tempHigh raised medium"]],
  ["temperature low", { temp: 35.9 }, ["tempLow raised low"]],
  ["temperature very low", { temp: 34.9 }, ["tempLow raised medium"]],
  ["glucose in its range", { glucose: 5.6 }, []],
  ["glucose under its range", { glucose: 5.5 }, ["glucoseLow raised low"]],
  ["glucose that is treated", { glucose: 3.8 }, ["glucoseLow raised high"]],
  ["glucose over its range", { glucose: 10.1 }, ["glucoseHigh raised low"]],
  ["glucose far over", { glucose: 20.1 }, ["glucoseHigh raised medium"]],
  ["CO2 by mask, low: no alert", { etco2: 20 }, []],
  ["CO2 by mask, very high", { etco2: 61 }, ["etco2HighBefore raised medium"]],
];

describe("one reading", () => {
  it.each(SINGLE)("%s", (_name, values, heard) => {
    const ward = new Ward();
    ward.say(values);
    expect(ward.heardNow()).toEqual(heard);
  });
  it("names number, target, deficit, age and origin", () => {
    const ward = new Ward();
    ward.at(10).say({ sbp: 120, dbp: 60 });
    expect(ward.at(12).round()).toEqual([
      {
        alertId: "mapLow",
        cause: "pressure",
        priority: "medium",
        ageMs: 2000,
        acknowledged: false,
        body: { kind: "limit", code: "map", side: "under", value: 80, target: 90, beyond: 10, origin: "computed" },
        reason: "raised",
        voice: "spoken",
        louder: false,
        covers: [{ alertId: "mapLow", priority: "medium", value: 80 }],
      },
    ]);
  });
});

describe("until it is cleared", () => {
  it("one good value is not enough, two in a row well above are", () => {
    const ward = new Ward();
    const seen = [88, 93, 88, 92, 93, 93].map((map) => {
      ward.say({ map });
      ward.round();
      return ward.standing()["mapLow"] ?? "none";
    });
    expect(seen).toEqual(["medium", "medium", "medium", "medium", "medium", "none"]);
  });
  it("steps down from high by the same rule, without words", () => {
    const ward = new Ward();
    const heard = [75, 84, 85].map((map) => {
      ward.say({ map });
      return [ward.heardNow(), ward.standing()["mapLow"]];
    });
    expect(heard).toEqual([
      [["mapLow raised high"], "high"],
      [[], "high"],
      [[], "medium"],
    ]);
  });
  it("is announced at once when worse", () => {
    const ward = new Ward();
    ward.say({ sbp: 105 });
    ward.round();
    ward.at(5).say({ sbp: 95 });
    expect(ward.heardNow()).toEqual(["sbpLow worse high"]);
  });
  it("is announced again until somebody has it: high after half a minute and then each minute, louder, medium every three", () => {
    const ward = new Ward();
    ward.say({ sbp: 95, spo2: 93 });
    ward.round();
    expect(ward.at(29).heardNow()).toEqual([]);
    expect(ward.at(30).heardNow()).toEqual(["sbpLow again high louder"]);
    expect(ward.at(89).heardNow()).toEqual([]);
    expect(ward.at(90).heardNow()).toEqual(["sbpLow again high louder"]);
    ward.has("sbpLow");
    expect(ward.at(179).heardNow()).toEqual([]);
    expect(ward.at(180).heardNow()).toEqual([]);
  });
  it("stands however long its values hover just above the band", () => {
    const ward = new Ward();
    ward.say({ map: 85 });
    ward.round();
    for (let i = 0; i < 250; i += 1) ward.say({ map: 92 });
    ward.round();
    expect(ward.standing()).toEqual({ mapLow: "medium" });
  });
  it("is not repeated while its value is back at target", () => {
    const ward = new Ward();
    ward.say({ map: 85 });
    ward.round();
    ward.at(10).say({ map: 91 });
    expect(ward.at(400).heardNow()).toEqual([]);
    expect(ward.standing()).toEqual({ mapLow: "medium" });
  });
  it("tells how old a number is, however old", () => {
    const ward = new Ward();
    ward.say({ sbp: 90 });
    ward.round();
    const [again] = ward.at(1200).round();
    expect(again).toMatchObject({ reason: "again", ageMs: 1_200_000 });
  });
  it("stays due until its words were queued", () => {
    const ward = new Ward();
    ward.say({ sbp: 90 });
    ward.add(...alertsDue(ward.state, protocol, 0).facts);
    expect(ward.at(1).heardNow()).toEqual(["sbpLow raised high"]);
    expect(ward.at(2).heardNow()).toEqual([]);
  });
});

describe("struck readings", () => {
  it("withdraw the alert that they raised, at once", () => {
    const ward = new Ward();
    ward.say({ map: 95 });
    const ids = ward.say({ map: 60 });
    ward.round();
    ward.strike(...ids);
    expect(ward.heardNow()).toEqual([]);
    expect(ward.standing()).toEqual({});
  });
  it("lower it to what the others still hold", () => {
    const ward = new Ward();
    ward.say({ map: 85 });
    ward.round();
    const ids = ward.say({ map: 60 });
    ward.round();
    ward.strike(...ids);
    ward.round();
    expect(ward.standing()).toEqual({ mapLow: "medium" });
  });
  it("do not make it worse by themselves: only a value that holds now does", () => {
    const ward = new Ward();
    for (const map of [75, 84]) {
      ward.say({ map });
      ward.round();
    }
    const ids = ward.say({ map: 85 });
    ward.round();
    ward.strike(...ids);
    expect(ward.heardNow()).toEqual([]);
    expect(ward.standing()).toEqual({ mapLow: "medium" });
  });
  it("of the only systolic clear it", () => {
    const ward = new Ward();
    const ids = ward.say({ sbp: 80 });
    ward.round();
    ward.strike(...ids);
    ward.round();
    expect(ward.standing()).toEqual({});
  });
});

describe("stand by", () => {
  it("holds repetitions back, except high ones", () => {
    const ward = new Ward();
    ward.say({ sbp: 95, spo2: 93 });
    ward.round();
    ward.at(170).add({ type: "standBy.started", untilMs: 230_000 });
    expect(ward.at(200).heardNow()).toEqual(["sbpLow again high louder"]);
    const quiet = new Ward();
    quiet.say({ spo2: 93 });
    quiet.round();
    quiet.at(170).add({ type: "standBy.started", untilMs: 230_000 });
    expect(quiet.at(200).heardNow()).toEqual([]);
    expect(quiet.at(230).heardNow()).toEqual(["spo2Low again medium"]);
  });
  it.each([
    ["stand by", { type: "standBy.started", untilMs: 60_000 } as const],
    ["a pause", { type: "alerts.paused", untilMs: 60_000, heard: "pause alerts one minute" } as const],
  ])("%s holds a new alert back until it is over, but not a high one", (_what, quiet) => {
    const ward = new Ward();
    ward.add(quiet);
    ward.at(1).say({ spo2: 93 });
    expect(ward.heardNow()).toEqual([]);
    expect(ward.standing()).toEqual({ spo2Low: "medium" });
    ward.at(2).say({ map: 70 });
    expect(ward.heardNow()).toEqual(["mapLow raised high"]);
    expect(ward.at(60).heardNow()).toContain("spo2Low raised medium");
  });
});

describe("mean and perfusion, one cause", () => {
  it("are announced as one: a measured perfusion pressure speaks, with the worse priority", () => {
    const ward = new Ward();
    ward.say({ map: 75, icp: 18 });
    expect(ward.heardNow()).toEqual(["cppLow raised high"]);
    expect(ward.standing()).toEqual({ cppLow: "medium", mapLow: "high" });
    expect(ward.at(1).heardNow()).toEqual([]);
  });
  it("a mean that worsens is heard at once through it", () => {
    const ward = new Ward();
    ward.say({ map: 81, icp: 22 });
    ward.round();
    ward.at(5).say({ map: 79 });
    expect(ward.heardNow()).toEqual(["cppLow worse high"]);
  });
  it("without ICP the mean speaks for itself", () => {
    const ward = new Ward();
    ward.say({ map: 75 });
    expect(ward.heardNow()).toEqual(["mapLow raised high"]);
  });
  it("once perfusion is back, a mean that is still low speaks for itself the next time", () => {
    const ward = new Ward();
    ward.say({ map: 81, icp: 22 });
    expect(ward.heardNow()).toEqual(["cppLow raised medium"]);
    ward.at(5).say({ icp: 15 });
    expect(ward.heardNow()).toEqual([]);
    expect(ward.at(180).heardNow()).toEqual(["mapLow again medium"]);
  });
  it.each([
    ["mean first", { map: 70, icp: 25 }, { map: 100, icp: 30 }],
    ["ICP first", { icp: 50, map: 95 }, { icp: 20, map: 100 }],
  ])("said in one breath are one perfusion reading, not two: %s", (_order, low, good) => {
    const ward = new Ward();
    const seen = [low, good, good].map((values) => {
      ward.say(values);
      ward.round();
      return ward.standing()["cppLow"] ?? "none";
    });
    expect(seen).toEqual(["high", "high", "none"]);
  });
  it("a mean overtaken by a newer systolic is not spoken of", () => {
    const ward = new Ward();
    ward.say({ sbp: 120, dbp: 60 });
    ward.round();
    ward.at(200).say({ sbp: 150 });
    expect(ward.heardNow()).toEqual([]);
    expect(ward.standing()).toEqual({ mapLow: "medium" });
  });
});

it("the screen sees what stands, with its number, also while it waits to be sure", () => {
  const ward = new Ward();
  ward.say({ map: 85 });
  ward.round();
  ward.at(10).say({ map: 91 });
  ward.round();
  expect(standingAlerts(ward.state, protocol, 11_000)).toEqual([
    {
      alertId: "mapLow",
      cause: "pressure",
      priority: "medium",
      ageMs: 1000,
      acknowledged: false,
      body: { kind: "limit", code: "map", side: "under", value: 91, target: 90, beyond: 0, origin: "measured" },
    },
  ]);
});
