import { minimalProtocol } from "../fixtures/minimalProtocol.ts";
import type { Change, CheckRows } from "./checkRow.ts";

const words = (n: number): string => Array.from({ length: n }, () => "word").join(" ");
const rule = minimalProtocol().alerts[1];
const [criticalBand] = rule?.bands ?? [];
const source = { reference: "x", kind: "memory", primaryRead: false };
const steps = (n: number) =>
  Array.from({ length: n }, (_, i) => ({ id: `s${i}`, name: `item ${i}`, challenge: "Ready?", killer: false, source }));

/** Faults of signs, ventilation, alerts, steps and timers. */
export const bedsideRows: CheckRows = {
  physiology: [
    [[["shock.strongAt.value", 0.8]], ["shock.strongAt.value: 0.8 is below 0.9, where the warning begins"]],
    [[["shock.strongAt.value", 0.9]], []],
    [
      [["shock.childUpper[1].fromAgeA", 5]],
      ["shock.childUpper[1].fromAgeA: 5 is below 6, where the band before it ends"],
    ],
    [
      [["shock.childUpper[1].belowAgeA", 6]],
      ["shock.childUpper[1].belowAgeA: 6 is not above 6: the band holds no age"],
    ],
    [[["trend.cushing.hrBelowPerMin.value", 19]], ["trend.cushing.hrBelowPerMin.value: 19 is outside 20 to 260"]],
    [
      [["trend.cushing.hrFallPct.value", 100]],
      ["trend.cushing.hrFallPct.value: 100 % is no fall that a heart survives: must be below 100"],
    ],
    [[["trend.gcsFall.fromUnder.value", 17]], ["trend.gcsFall.fromUnder.value: 17 is outside 4 to 16"]],
    [[["trend.gcsFall.points.value", 6]], ["trend.gcsFall.points.value: no total under 9 can fall by 6"]],
    [[["trend.gcsFall.points.value", 5]], []],
    [
      [["trend.pupilDifferenceMm.value", 8]],
      ["trend.pupilDifferenceMm.value: no two pupils are further apart than 8 mm: must be below that"],
    ],
    [
      [["lowPressure.publishedSbpFloorMmHg.value", 29]],
      ["lowPressure.publishedSbpFloorMmHg.value: 29 is outside 30 to 300"],
    ],
    [[["oxygen.stopSpo2Pct.value", 89]], ["oxygen.dangerSpo2Pct.value: 90 is above 89, where an attempt stops"]],
    [[["oxygen.stopSpo2Pct.value", 90]], []],
    [[["oxygen.stopSpo2Pct.value", 101]], ["oxygen.stopSpo2Pct.value: 101 is outside 40 to 100"]],
    [[["oxygen.dangerSpo2Pct.value", 39]], ["oxygen.dangerSpo2Pct.value: 39 is outside 40 to 100"]],
  ],
  "ventilation and tubes": [
    [
      [["ventilation.tidalMlPerKg.value.usual", 5]],
      ["ventilation.tidalMlPerKg.value.usual: 5 mL/kg is below the low end of 6 mL/kg"],
    ],
    [
      [["ventilation.tidalMlPerKg.value.high", 6.5]],
      ["ventilation.tidalMlPerKg.value.high: 6.5 mL/kg is below the usual 7 mL/kg"],
    ],
    [
      [["ventilation.startRatePerMin.value.high", 81]],
      ["ventilation.startRatePerMin.value.high: 81 is outside 2 to 80"],
    ],
    [
      [["ventilation.deadSpaceMlPerKg.value", 6]],
      ["ventilation.deadSpaceMlPerKg.value: 6 mL/kg leaves nothing of the smallest breath of 6 mL/kg"],
    ],
    ...(["adult", "child", "infant"] as const).map((who): [Change[], string[]] => [
      [[`ventilation.herniationRatePerMin.${who}.value`, 81]],
      [`ventilation.herniationRatePerMin.${who}.value: 81 is outside 2 to 80`],
    ]),
    ...["female.sizeMm", "male.sizeMm", "cuffCmH2O.adult", "cuffCmH2O.child"].map((range): [Change[], string[]] => [
      [[`tubes.${range}.value`, { low: 9, high: 8 }]],
      [`tubes.${range}.value.high: 8 is below the low end of 9`],
    ]),
  ],
  alerts: [
    [[["alerts[1].id", "mapLow"]], ['alerts[1].id: the alert "mapLow" is used at alerts[0].id already']],
    [[["alerts[1].code", "map"]], ['alerts[1].code: an alert on "map" is used at alerts[0].code already']],
    [
      [["alerts[0].bands[0].inclusive", true]],
      ["alerts[0].bands[0].inclusive: a value at its target has no deficit: must be false in a band at the target"],
    ],
    [[["alerts[0].bands[1].inclusive", true]], []],
    [
      [["alerts[0].bands[0].at", "critical"]],
      ["alerts[0].bands[1].at: the band at the target comes first, then the one at the critical limit, each once"],
    ],
    [
      [["alerts[0].bands[1].at", "target"]],
      ["alerts[0].bands[1].at: the band at the target comes first, then the one at the critical limit, each once"],
    ],
    [
      [["alerts[0].bands[1].priority", "medium"]],
      ["alerts[0].bands[1].priority: medium is not worse than medium, the priority of the band before it"],
    ],
    [
      [["alerts[0].bands[1].priority", "low"]],
      ["alerts[0].bands[1].priority: low is not worse than medium, the priority of the band before it"],
    ],
    [
      [["alerts[1].clearBy", 11]],
      [
        "alerts[1].clearBy: no value could clear this alert: it would have to reach 101, and 100 is the highest that is believed",
      ],
    ],
    [[["alerts[1].clearBy", 10]], []],
    // 90 is the highest mean target of any patient here.
    [[["alerts[0].clearBy", 160]], []],
    [
      [["alerts[0].clearBy", 161]],
      [
        "alerts[0].clearBy: no value could clear this alert: it would have to reach 251, and 250 is the highest that is believed",
      ],
    ],
    // Herniation lifts the mean to 60 and the ICP that is assumed, in a child to 45 and that.
    [
      [
        ["targets.herniation.assumedIcpMmHg.value", 50],
        ["alerts[0].clearBy", 141],
      ],
      [
        "alerts[0].clearBy: no value could clear this alert: it would have to reach 251, and 250 is the highest that is believed",
      ],
    ],
    [
      [
        ["targets.herniation.assumedIcpMmHg.value", 50],
        ["alerts[0].clearBy", 140],
      ],
      [],
    ],
    // A bleed lifts the systolic target to 130.
    [
      [
        [
          "alerts[1]",
          { ...rule, code: "sbp", bands: [{ ...criticalBand, at: "target", inclusive: false }], clearBy: 171 },
        ],
      ],
      [
        "alerts[1].clearBy: no value could clear this alert: it would have to reach 301, and 300 is the highest that is believed",
      ],
    ],
    // A number of its own follows the named limits, further out in every patient; CPP and MAP have no ceiling.
    [[["alerts[0].bands[1].at", 55]], []],
    [[["alerts[0].bands[1].at", 70]], ["alerts[0].bands[1].at: 70 is milder than the band before it in some patient"]],
    [
      [["alerts[0].side", "over"]],
      [
        "alerts[0].bands[0].at: there is no target for map on this side: a number is needed",
        "alerts[0].bands[1].at: there is no critical for map on this side: a number is needed",
      ],
    ],
    [
      [
        [
          "alerts[1]",
          {
            ...rule,
            code: "icp",
            side: "over",
            bands: [{ ...criticalBand, at: "target", inclusive: false }],
            clearBy: 26,
          },
        ],
      ],
      [
        "alerts[1].clearBy: no value could clear this alert: it would have to reach -6, and 0 is the lowest that is believed",
      ],
    ],
    [
      [["timers.alertCap.keptForNew.value", 6]],
      ["timers.alertCap.keptForNew.value: 6 kept for new alerts leaves none of 6 for the others"],
    ],
    [
      [["targets.populations[1].hrPerMin.critical.value", { low: 50, high: 150 }]],
      ["targets.populations[1].hrPerMin.critical.value: 50 to 150 must lie outside 50 to 120"],
    ],
    [
      [["alerts[1]", { ...rule, code: "cpp", clearBy: 201 }]],
      [
        "alerts[1].clearBy: no value could clear this alert: it would have to reach 251, and 250 is the highest that is believed",
      ],
    ],
  ],
  steps: [
    [[["groups[1].id", "patient"]], ['groups[1].id: the group "patient" is used at groups[0].id already']],
    [
      [["groups[1].steps[0].id", "vitals"]],
      ['groups[1].steps[0].id: the step "vitals" is used at groups[0].steps[1].id already'],
    ],
    [
      [["groups[0].steps[0].challenge", words(9)]],
      ["groups[0].steps[0].challenge: has 9 words; at most 8 can be read out"],
    ],
    [[["groups[0].steps[0].challenge", words(8)]], []],
    [[["groups[1].steps[0].carries.high", 6]], ["groups[1].steps[0].carries.high: 6 is below the low end of 7"]],
    [[["groups[0].phase", "afterTube"]], ["groups: has no group of the phase prepare"]],
    [[["groups[1].phase", "rescue"]], []],
    [[["groups[1].phase", "failedAirway"]], []],
    [
      [["groups[0].steps[0].name", words(4)]],
      ["groups[0].steps[0].name: has 4 words; at most 3 can be said among others"],
    ],
    [[["groups[0].steps[0].name", words(3)]], []],
    [
      [["groups[1].steps[0].name", "First  Vitals"]],
      ['groups[1].steps[0].name: the step name "first vitals" is used at groups[0].steps[1].name already'],
    ],
    [
      [["groups[1].steps[1].satisfiedBy.drugClass", "opioid"]],
      ['groups[1].steps[1].satisfiedBy.drugClass: no drug is of the class "opioid": nothing could answer this step'],
    ],
    [
      [["groups[1].steps[2].satisfiedBy.drugClasses", ["induction", "opioid"]]],
      [
        'groups[1].steps[2].satisfiedBy.drugClasses[1]: no drug is of the class "opioid": nothing could answer this step',
      ],
    ],
    [
      [["groups[1].steps[2].satisfiedBy", { kind: "infusion-running", drugClasses: ["other"] }]],
      [
        'groups[1].steps[2].satisfiedBy.drugClasses[0]: no drug is of the class "other": nothing could answer this step',
      ],
    ],
    [[["groups[1].steps[2].satisfiedBy", { kind: "infusion-running", drugClasses: ["induction"] }]], []],
    [[["groups[0].steps", steps(34)]], []],
    [[["groups[0].steps", steps(35)]], ["groups: has 35 preparation steps; at most 34 can be read out"]],
    [[["groups[1].steps", steps(35)]], []],
  ],
  confirm: [
    [
      [["confirm.sbp.actionEdges", [110, 100]]],
      ["confirm.sbp.actionEdges[1]: 100 is not above 110, the edge before it"],
    ],
    [
      [["confirm.sbp.actionEdges", [100, 100]]],
      ["confirm.sbp.actionEdges[1]: 100 is not above 100, the edge before it"],
    ],
    [
      [["confirm.sbp.actionEdges", [29, 30, 300, 301]]],
      ["confirm.sbp.actionEdges[0]: 29 is outside 30 to 300", "confirm.sbp.actionEdges[3]: 301 is outside 30 to 300"],
    ],
  ],
  timers: [
    [
      [["timers.reannounceS.medium.value", 59]],
      ["timers.reannounceS.medium.value: 59 s is shorter than 60 s, the wait at high priority"],
    ],
    [
      [["timers.reannounceS.low.value", 119]],
      ["timers.reannounceS.low.value: 119 s is shorter than 120 s, the wait at medium priority"],
    ],
    [[["timers.reannounceS.medium.value", 60]], []],
    [
      [["timers.pressureEveryS.usual.value", 59]],
      ["timers.pressureEveryS.usual.value: 59 s is shorter than 60 s, the interval around induction"],
    ],
    [
      [["timers.recheckGasS.value", 299]],
      ["timers.recheckGasS.value: 299 s is shorter than 300 s, the wait before EtCO2"],
    ],
    [
      [["timers.promptAgainS.high.value", 61]],
      ["timers.promptAgainS.medium.value: 60 s is shorter than 61 s, the wait at high priority"],
    ],
    [
      [["timers.promptAgainS.low.value", 59]],
      ["timers.promptAgainS.low.value: 59 s is shorter than 60 s, the wait at medium priority"],
    ],
    [[["timers.afterTube.forS.value", 59]], ["timers.afterTube.forS.value: 59 s is shorter than 60 s, one interval"]],
    [
      [["timers.watch.longestS.value", 60]],
      ["timers.watch.longestS.value: 60 s is not longer than 60 s, the shortest interval"],
    ],
    [[["timers.watch.longestS.value", 61]], []],
  ],
};
