import { describe, expect, it } from "vitest";
import { defaultProtocol as protocol } from "../../../src/protocol/defaultProtocol.ts";
import { acknowledgeable } from "../../../src/rules/alerts/acknowledgeable.ts";
import { standingAlerts } from "../../../src/rules/alerts/standing.ts";
import { Ward } from "./ward.ts";

const ids = (ward: Ward) => acknowledgeable(ward.state, protocol, ward.nowMs).map(({ alertId }) => alertId);

describe("somebody has an alert", () => {
  it("then it is not said again, and stands on the screen as acknowledged", () => {
    const ward = new Ward();
    ward.say({ map: 85 });
    ward.round();
    ward.at(5).has("mapLow");
    expect(ward.at(3600).heardNow()).toEqual([]);
    expect(standingAlerts(ward.state, protocol, ward.nowMs)).toMatchObject([{ alertId: "mapLow", acknowledged: true }]);
  });
  it("until it is worse by a band", () => {
    const ward = new Ward();
    ward.say({ map: 85 });
    ward.round();
    ward.has("mapLow");
    ward.at(5).say({ map: 79 });
    expect(ward.heardNow()).toEqual(["mapLow worse high"]);
    expect(ward.at(35).heardNow()).toEqual(["mapLow again high louder"]);
  });
  it.each([
    ["a little worse in the same band", 70, []],
    ["as much worse as the protocol says", 69, ["mapLow worse high"]],
  ] as const)("%s than when it was said", (_what, map, heard) => {
    const ward = new Ward();
    ward.say({ map: 79 });
    ward.round();
    ward.has("mapLow");
    ward.at(5).say({ map });
    expect(ward.heardNow()).toEqual(heard);
  });
  it("a fall in small steps is measured from what was taken on, not from the last of them", () => {
    const ward = new Ward();
    ward.say({ map: 79 });
    ward.round();
    ward.has("mapLow");
    const heard = [76, 73, 70, 68].map((map, i) => {
      ward.at(10 + i).say({ map });
      return ward.heardNow();
    });
    expect(heard).toEqual([[], [], [], ["mapLow worse high"]]);
  });
  it("and comes anew once it was cleared", () => {
    const ward = new Ward();
    ward.say({ map: 85 });
    ward.round();
    ward.has("mapLow");
    for (const map of [95, 96, 84]) {
      ward.say({ map });
      ward.round();
    }
    expect(ids(ward)).toEqual(["mapLow"]);
  });
  it("never silences another one, not even of the same cause", () => {
    const ward = new Ward();
    ward.say({ map: 70, spo2: 88 });
    ward.round();
    ward.has("mapLow");
    expect(ward.at(30).heardNow()).toEqual(["spo2Low again high louder"]);
    ward.at(31).say({ sbp: 90 });
    expect(ward.heardNow()).toEqual(["sbpLow raised high"]);
  });
});

it("lends nothing of its weight to another of its cause that is new", () => {
  const ward = new Ward();
  ward.say({ map: 75 });
  ward.round();
  ward.has("mapLow");
  ward.has("cppBoundLow");
  const { keptValue } = ward.state.alerts["mapLow"] ?? {};
  ward.at(10).say({ sbp: 105, map: 74 });
  expect(ward.heardNow()).toEqual(["sbpLow raised medium"]);
  expect(ward.state.alerts["mapLow"]?.keptValue).toBe(keptValue);
});

it("what was said last is acknowledged first; what was said as one has one time", () => {
  const ward = new Ward();
  ward.say({ map: 70 });
  ward.round();
  ward.at(1).say({ spo2: 93 });
  ward.round();
  const said = acknowledgeable(ward.state, protocol, ward.nowMs).map((a) => [a.cause, a.saidAtMs]);
  expect(said).toEqual([
    ["oxygen", 1000],
    ["pressure", 0],
    ["pressure", 0],
  ]);
});
