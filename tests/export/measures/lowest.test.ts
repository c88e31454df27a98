import { describe, expect, it } from "vitest";
import { selectLowest, selectLowestAround } from "../../../src/export/measures/lowest.ts";
import { INDUCTION_WINDOW } from "../../../src/log/inductionWindow.ts";
import { airway, built, given } from "./builtCase.ts";

const at = (minutes: number) => minutes * 60_000;

describe("the lowest values", () => {
  // The window of clinical.md §9: from 2 min before induction to 10 after it. Drugs at 20 min: 18 to 30 min.
  const recorded = built((b) => {
    b.min(0).say({ sbp: 70, map: 50, spo2: 80, icp: 10 });
    b.min(17.9).say({ spo2: 85 });
    b.min(18).say({ sbp: 104, spo2: 93 });
    b.min(20).add(given("induction"), given("muscleRelaxant"));
    b.min(22).say({ map: 64, icp: 24 });
    b.min(26).say({ sbp: 98, dbp: 50 });
    b.min(30).say({ spo2: 91 });
    b.min(30.1).say({ sbp: 60, spo2: 70 });
  });

  it("around induction, with how many readings there were", () => {
    expect(INDUCTION_WINDOW.value).toEqual({ beforeS: 120, afterS: 600 });
    expect(selectLowestAround(recorded)).toEqual({
      sbp: { value: { atMs: at(26), value: 98, readings: 2 } },
      map: { value: { atMs: at(22), value: 64, readings: 2 } },
      // 64 − 24 = 40; then the pair 98/50 gives (98 + 2·50)/3 = 66, and 66 − 24 = 42.
      cpp: { value: { atMs: at(22), value: 40, readings: 2 } },
      spo2: { value: { atMs: at(30), value: 91, readings: 2 } },
    });
  });

  it("of the whole case", () => {
    const { sbp, map, cpp, spo2 } = selectLowest(recorded);
    const values = [sbp, map, cpp, spo2].map((m) => ("value" in m ? m.value.value : m.unknown));
    // 50 − 10 = 40 at 0 min is as low as that at 22 min: the first of equals.
    expect(values).toEqual([60, 50, 40, 70]);
    expect(cpp).toEqual({ value: { atMs: 0, value: 40, readings: 3 } });
  });

  it("reach until the tube where that was later than the window", () => {
    const late = built((b) => {
      b.min(0).add(given("muscleRelaxant"));
      b.min(13).say({ spo2: 72 });
      b.min(14).add(airway("tubeConfirmed"));
      b.min(14.1).say({ spo2: 60 });
    });
    expect(selectLowestAround(late).spo2).toEqual({ value: { atMs: at(13), value: 72, readings: 1 } });
  });

  it("are none where nothing was measured, or no induction is known", () => {
    const none = { unknown: "no-induction" };
    expect(selectLowestAround(built((b) => b.say({ sbp: 60 })))).toEqual({
      sbp: none,
      map: none,
      cpp: none,
      spo2: none,
    });
    const { sbp, cpp } = selectLowest(built((b) => b.say({ map: 60 })));
    expect([sbp, cpp]).toEqual([{ unknown: "not-measured" }, { unknown: "not-measured" }]);
  });
});
