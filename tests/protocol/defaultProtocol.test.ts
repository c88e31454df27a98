import { describe, expect, it } from "vitest";
import { VITALS, type VitalCode } from "../../src/core/vitals.ts";
import json from "../../src/protocol/defaultProtocol.json" with { type: "json" };
import { defaultProtocol as protocol } from "../../src/protocol/defaultProtocol.ts";
import type { Protocol, Step } from "../../src/protocol/protocol.ts";
import { validateProtocol } from "../../src/protocol/validate.ts";

it("is a valid file, and an example until somebody has approved it", () => {
  expect(validateProtocol(json)).toEqual({ ok: true, value: json });
  expect(protocol.status).toBe("example");
});

/** As summaries of the named papers give them; who approves a protocol opens the papers. */
const PUBLISHED: readonly [string, number, number][] = [
  ["saturation never at or below: Lulla 2023", protocol.targets.spo2Pct.critical.value, 90],
  ["longest interval between pressures, 10 min: Lulla 2023", protocol.timers.staleAfterS.value, 600],
  [
    "pressure under which depth and length are summed: Spaite 2017",
    protocol.lowPressure.publishedSbpFloorMmHg.value,
    90,
  ],
  ["shock index that foretells low pressure: Heffner 2012", protocol.shock.warnAt.value, 0.8],
  ["saturation that endangers: Weingart and Levitan 2012", protocol.oxygen.dangerSpo2Pct.value, 70],
  ["measures against herniation, 20 min: tactical guidance", protocol.timers.herniationMeasuresS.value, 1200],
  ["breaths in herniation, adult: New York advisory 1997", protocol.ventilation.herniationRatePerMin.adult.value, 20],
  ["breaths in herniation, child: New York advisory 1997", protocol.ventilation.herniationRatePerMin.child.value, 25],
  ["fever that is treated: J Neurotrauma protocol table", protocol.targets.tempCel.treatFrom.value, 38],
  ["glucose that is treated, 70 mg/dL", Math.round(protocol.targets.glucoseMmolPerL.treatBelow.value * 18.016), 70],
];

describe("published numbers", () => {
  it.each(PUBLISHED)("%s", (_source, ours, published) => expect(ours).toBe(published));
});

it("says the usual glucose in millimoles as it is published in milligrams: 100 to 180", () => {
  const { low, high } = protocol.targets.glucoseMmolPerL.hold.value;
  expect([Math.round(low * 18.016), Math.round(high * 18.016)]).toEqual([101, 180]);
});

describe("alerts", () => {
  it("watch every number with a limit, on the side where it hurts", () => {
    expect(
      protocol.alerts.map(({ id, code, side, clearBy, clearReadings }) => [id, code, side, clearBy, clearReadings]),
    ).toEqual([
      ["cppLow", "cpp", "under", 3, 2],
      ["cppBoundLow", "cppBound", "under", 3, 2],
      ["mapLow", "map", "under", 3, 2],
      ["sbpLow", "sbp", "under", 5, 2],
      ["sbpHigh", "sbp", "over", 5, 2],
      ["spo2Low", "spo2", "under", 2, 2],
      ["etco2Low", "etco2", "under", 2, 2],
      ["etco2High", "etco2", "over", 2, 2],
      ["etco2HighBefore", "etco2", "over", 2, 2],
      ["hrLow", "hr", "under", 3, 2],
      ["hrHigh", "hr", "over", 5, 2],
      ["tempLow", "temp", "under", 0.3, 2],
      ["tempHigh", "temp", "over", 0.3, 2],
      ["glucoseLow", "glucose", "under", 0.3, 2],
      ["glucoseHigh", "glucose", "over", 1, 2],
      ["icpHigh", "icp", "over", 2, 2],
    ]);
  });

  it("take pressures, saturation and CO2 at their targets for pressing, and at their limits for an emergency", () => {
    const rows = protocol.alerts.map(({ id, bands }) => [id, bands.map(({ at, priority }) => `${at} ${priority}`)]);
    expect(Object.fromEntries(rows)).toEqual({
      cppLow: ["target medium", "critical high"],
      cppBoundLow: ["target medium", "critical high"],
      mapLow: ["target medium", "critical high"],
      sbpLow: ["target medium", "critical high"],
      sbpHigh: ["target medium"],
      spo2Low: ["target medium", "critical high"],
      etco2Low: ["target medium", "25 high"],
      etco2High: ["target medium", "60 high"],
      etco2HighBefore: ["60 medium"],
      hrLow: ["target medium", "critical high"],
      hrHigh: ["target low", "critical medium"],
      tempLow: ["target low", "35 medium"],
      tempHigh: ["critical low", "39 medium"],
      glucoseLow: ["target low", "critical high"],
      glucoseHigh: ["target low", "20 medium"],
      icpHigh: ["target medium"],
    });
  });

  it("take a saturation of 90 itself as an emergency, a temperature that is treated from itself, and no other limit", () => {
    const inclusive = protocol.alerts.flatMap(({ code, bands }) =>
      bands.filter((b) => b.inclusive).map((b) => [code, b.at]),
    );
    expect(inclusive).toEqual([
      ["spo2", "critical"],
      ["temp", "critical"],
    ]);
  });
});

it("every vital has a rule for being asked back: none is taken on trust", () => {
  expect(Object.keys(protocol.confirm).sort()).toEqual(Object.keys(VITALS).sort());
});

it("age, ICP and weight are asked back whatever a mishearing would change", () => {
  const always = (Object.keys(protocol.confirm) as VitalCode[]).filter(
    (code) => protocol.confirm[code]?.soundAlike === "always",
  );
  expect(always.sort()).toEqual(["age", "icp", "weight"]);
});

it("asks an age back across every age at which other targets begin", () => {
  const starts = protocol.targets.populations.flatMap(({ fromAgeA }) => (fromAgeA > 0 ? [fromAgeA] : []));
  expect(protocol.confirm.age?.actionEdges).toEqual(starts);
});

type Phase = Protocol["groups"][number]["phase"];
const stepsOf = (phase: Phase) =>
  protocol.groups.filter((group) => group.phase === phase).flatMap((group) => group.steps);

describe("steps", () => {
  it("five killer items before the drugs may be waived only aloud, and one after the tube", () => {
    const killers = (phase: Phase) => stepsOf(phase).flatMap(({ id, killer }) => (killer ? [id] : []));
    expect(killers("prepare")).toEqual(["neuroExam", "preoxygenation", "pushDose", "capnograph", "failurePlan"]);
    expect(killers("afterTube")).toEqual(["traceSustained"]);
    expect([...killers("rescue"), ...killers("failedAirway")]).toEqual([]);
  });

  it("no group is longer than eight items, and the list before the drugs is no longer than thirty-four", () => {
    expect(Math.max(...protocol.groups.map(({ steps }) => steps.length))).toBeLessThanOrEqual(8);
    expect(stepsOf("prepare").length).toBeLessThanOrEqual(34);
  });

  it("are read in one breath: at most eight words", () => {
    const all = protocol.groups.flatMap(({ steps }) => steps);
    expect(all.filter(({ challenge }) => challenge.split(/\s+/u).length > 8)).toEqual([]);
  });

  it("come to every theme after the tube", () => {
    expect(stepsOf("afterTube").map(({ id }) => id)).toEqual([
      "traceSustained",
      "tubeDepth",
      "pressureEachMinute",
      "carbonDioxide",
      "sedationRunning",
      "tubeHeld",
      "pressorRate",
      "headUpAgain",
      "collarLoose",
      "breathVolume",
      "endPressure",
      "pupilsAgain",
      "temperatureNow",
      "glucoseNow",
      "nextFullSet",
    ]);
  });

  it("come to every theme of the rescue and of the failed airway, in order", () => {
    expect(stepsOf("rescue").map(({ id }) => id)).toEqual([
      "rescueHeadUp",
      "rescuePressure",
      "rescueCarbonDioxide",
      "rescueOsmotic",
      "rescueSedation",
      "rescueSurgeon",
    ]);
    expect(stepsOf("failedAirway").map(({ id }) => id)).toEqual([
      "failureCalled",
      "maskOxygen",
      "supraglotticIn",
      "wakeOrGoOn",
      "frontOfNeck",
      "fallingPressure",
    ]);
  });

  const answeredBy = (kind: NonNullable<Step["satisfiedBy"]>["kind"]) =>
    protocol.groups.flatMap(({ steps }) => steps).flatMap((s) => (s.satisfiedBy?.kind === kind ? [s.id] : []));

  it.each<[Parameters<typeof answeredBy>[0], readonly string[]]>([
    ["map-at-target", ["meanPressure", "rescuePressure"]],
    ["recorded", ["neuroExam", "pupilsAgain", "temperatureNow", "glucoseNow"]],
    ["preoxygenated", ["preoxygenation"]],
    ["strength-affirmed", ["inductionDrug", "paralytic", "pushDose"]],
    ["infusion-running", ["pressorInfusion", "pressorRate"]],
    ["etco2-in-band", ["carbonDioxide", "rescueCarbonDioxide"]],
    ["airway", ["traceSustained"]],
    ["fluid-given", ["fluid"]],
  ])("are answered by the record, %s", (kind, ids) => expect(answeredBy(kind)).toEqual(ids));

  it("look at the brain before paralysis hides it, and at the patient again once the tube is in", () => {
    const when = protocol.groups
      .flatMap(({ steps }) => steps)
      .flatMap(({ id, satisfiedBy: by }) => (by?.kind === "recorded" ? [[id, by.when]] : []));
    expect(when).toEqual([
      ["neuroExam", "beforeParalysis"],
      ["pupilsAgain", "sinceTube"],
      ["temperatureNow", "sinceTube"],
      ["glucoseNow", "sinceTube"],
    ]);
  });

  it("believe the value of an answer only where it can be meant", () => {
    const carried = [...stepsOf("prepare"), ...stepsOf("afterTube")].flatMap(({ id, carries }) =>
      carries ? [{ id, ...carries }] : [],
    );
    expect(carried.map(({ id }) => id)).toContain("tubeDepth");
    expect(carried.filter(({ low, high }) => low >= high)).toEqual([]);
  });
});

it("prompts for sedation before any induction drug can have worn off, as its usual length goes", () => {
  const induction = protocol.drugs.filter(({ class: kind }) => kind === "induction");
  const longest = induction.map(({ durationS }) => durationS?.value.high ?? 0);
  expect(induction.map(({ id }) => id)).toEqual(["ketamine", "etomidate", "propofol"]);
  expect(protocol.timers.sedationDueS.value).toBeLessThanOrEqual(Math.min(...longest));
});

it("looks at pressure more often than it calls a reading stale", () => {
  const { pressureEveryS, staleAfterS } = protocol.timers;
  expect(pressureEveryS.induction.value).toBeLessThan(pressureEveryS.usual.value);
  expect(pressureEveryS.usual.value).toBeLessThan(staleAfterS.value);
});

describe("shock index in children", () => {
  const ROWS: readonly [number, number][] = [
    [4, 1.22],
    [6, 1.22],
    [7, 1],
    [12, 1],
    [13, 0.9],
    [16, 0.9],
  ];
  it.each(ROWS)("at %d years is high over %d", (ageA, upper) => {
    const rows = protocol.shock.childUpper.filter((r) => r.fromAgeA <= ageA && ageA < r.belowAgeA);
    expect(rows.map((r) => r.upper)).toEqual([upper]);
  });
});
