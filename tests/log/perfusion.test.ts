import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { selectPerfusion } from "../../src/log/perfusion.ts";
import { defaultProtocol as protocol } from "../../src/protocol/defaultProtocol.ts";
import { CaseBuilder } from "./caseBuilder.ts";

const perfusionOf = (c: CaseBuilder, nowS: number) => selectPerfusion(c.state, protocol, nowS * 1000);

describe("perfusion against target", () => {
  it("an empty case has no number at all", () => {
    expect(perfusionOf(new CaseBuilder(), 100)).toEqual({ cpp: { kind: "none" }, stale: false });
  });
  it("without a measured ICP there are bounds and no CPP", () => {
    const c = new CaseBuilder();
    c.at(10).say({ sbp: 120, dbp: 60 }, "cuff");
    expect(perfusionOf(c, 130)).toEqual({
      pressure: { sbp: 120, dbp: 60, method: "cuff", atMs: 10_000 },
      map: {
        mapMmHg: 80,
        kind: "computed",
        atMs: 10_000,
        level: "cuff",
        targetMmHg: 90,
        deficitMmHg: 10,
        marginMmHg: 0,
      },
      cpp: {
        kind: "bounded",
        underTargetIfIcpOverMmHg: 20,
        lowMmHg: 50,
        highMmHg: 60,
        assumedIcp: { low: 20, high: 30 },
        targetMmHg: 60,
      },
      oldestInputAgeMs: 120_000,
      stale: false,
    });
  });
  it("with a measured ICP there is a CPP and its deficit", () => {
    const c = new CaseBuilder();
    c.say({ sbp: 120, dbp: 60 });
    c.say({ icp: 22 });
    const { cpp, icp } = perfusionOf(c, 0);
    expect(cpp).toEqual({
      kind: "measured",
      cppMmHg: 58,
      mapLevel: "heart",
      levelsAgree: false,
      targetMmHg: 60,
      deficitMmHg: 2,
    });
    expect(icp).toEqual({ icpMmHg: 22, atMs: 0 });
  });
  it.each([
    [undefined, "heart"],
    ["cuff", "cuff"],
    ["arterial", "heart"],
  ] as const)("a mean taken by %s, level not said, is at the level of the %s", (method, mapLevel) => {
    const c = new CaseBuilder();
    c.say({ sbp: 120, dbp: 60 }, method);
    c.say({ icp: 22 });
    expect(perfusionOf(c, 0).cpp).toMatchObject({ mapLevel, levelsAgree: false });
  });
  it("the age is that of the oldest input, and over ten minutes it is stale", () => {
    const c = new CaseBuilder();
    c.say({ icp: 15 });
    c.at(300).say({ sbp: 140, dbp: 80 });
    expect(perfusionOf(c, 600)).toMatchObject({ oldestInputAgeMs: 600_000, stale: false });
    expect(perfusionOf(c, 601)).toMatchObject({ oldestInputAgeMs: 601_000, stale: true });
  });
  it("a clock that was set back gives no negative age", () => {
    const c = new CaseBuilder();
    c.at(60).say({ sbp: 140, dbp: 80 });
    expect(perfusionOf(c, 30).oldestInputAgeMs).toBe(0);
  });
  it("a systolic said alone is shown alone, never with an older diastolic", () => {
    const c = new CaseBuilder();
    c.say({ sbp: 120, dbp: 60 });
    c.at(60).say({ sbp: 80 }, "palpated");
    const { pressure, map, cpp } = perfusionOf(c, 60);
    expect({ pressure, map, cpp }).toEqual({
      pressure: { sbp: 80, method: "palpated", atMs: 60_000 },
      map: undefined,
      cpp: { kind: "none" },
    });
  });
});

describe("the targets of the patient", () => {
  it("of a child of six are those of a child: mean 65, perfusion 45", () => {
    const c = new CaseBuilder();
    c.patient({ ageA: 6 });
    c.say({ sbp: 90, dbp: 48 });
    c.say({ icp: 20 });
    const { map, cpp } = perfusionOf(c, 0);
    expect(map).toMatchObject({ mapMmHg: 62, targetMmHg: 65, deficitMmHg: 3 });
    expect(cpp).toMatchObject({ cppMmHg: 42, targetMmHg: 45, deficitMmHg: 3 });
  });
  it("count from the age on, for what was measured before too", () => {
    const c = new CaseBuilder();
    c.say({ map: 70 });
    expect(perfusionOf(c, 0).map).toMatchObject({ targetMmHg: 90, deficitMmHg: 20 });
    expect(perfusionOf(c, 0).cpp).toMatchObject({ kind: "bounded", underTargetIfIcpOverMmHg: 10 });
    c.patient({ ageA: 6 });
    expect(perfusionOf(c, 0).map).toMatchObject({ targetMmHg: 65, deficitMmHg: 0, marginMmHg: 5 });
    expect(perfusionOf(c, 0).cpp).toMatchObject({ kind: "bounded", underTargetIfIcpOverMmHg: 25 });
  });
});

const mean = fc.integer({ min: 30, max: 200 });

describe("properties", () => {
  it("a CPP number appears exactly when an ICP was measured", () => {
    fc.assert(
      fc.property(mean, fc.option(fc.integer({ min: 0, max: 100 })), (map, icp) => {
        const c = new CaseBuilder();
        c.say(icp === null ? { map } : { map, icp });
        expect(perfusionOf(c, 0).cpp.kind).toBe(icp === null ? "bounded" : "measured");
      }),
    );
  });
  it("the bounds hold whatever the ICP turns out to be", () => {
    fc.assert(
      fc.property(mean, fc.integer({ min: 0, max: 100 }), (map, icp) => {
        const before = new CaseBuilder();
        before.say({ map });
        const after = new CaseBuilder();
        after.say({ map, icp });
        const bounds = perfusionOf(before, 0).cpp;
        const { cpp } = perfusionOf(after, 0);
        if (bounds.kind !== "bounded" || cpp.kind !== "measured") throw new Error("unexpected kind");
        expect(cpp.cppMmHg < cpp.targetMmHg).toBe(icp > bounds.underTargetIfIcpOverMmHg);
        if (icp >= bounds.assumedIcp.low && icp <= bounds.assumedIcp.high) {
          expect(cpp.cppMmHg).toBeGreaterThanOrEqual(bounds.lowMmHg);
          expect(cpp.cppMmHg).toBeLessThanOrEqual(bounds.highMmHg);
        }
      }),
    );
  });
});
