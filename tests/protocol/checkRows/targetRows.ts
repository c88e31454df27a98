import { minimalProtocol } from "../fixtures/minimalProtocol.ts";
import type { CheckRows } from "./checkRow.ts";

const CHILD = "targets.populations[0]";
const ADULT = "targets.populations[1]";
const BLEED = "targets.causes[1].sbpRangeMmHg.value";
const bleed = minimalProtocol().targets.causes[1];

/** Faults of ages, causes and targets. */
export const targetRows: CheckRows = {
  ages: [
    [[[`${ADULT}.fromAgeA`, 16]], [`${ADULT}.fromAgeA: ages 15 to 16 have no targets`]],
    [[[`${ADULT}.fromAgeA`, 14]], [`${ADULT}.fromAgeA: ages from 14 to 15 have targets already`]],
    [[[`${CHILD}.fromAgeA`, 1]], [`${CHILD}.fromAgeA: ages 0 to 1 have no targets`]],
    [[[`${ADULT}.belowAgeA`, 110]], [`${ADULT}.belowAgeA: ages from 110 to 110 have no targets`]],
    [[[`${ADULT}.belowAgeA`, 110.5]], []],
    [
      [
        [`${CHILD}.belowAgeA`, 20],
        [`${ADULT}.fromAgeA`, 20],
        [`${ADULT}.belowAgeA`, 20],
      ],
      [
        `${ADULT}.belowAgeA: 20 is not above 20: "adult" holds no age`,
        `${ADULT}.belowAgeA: ages from 20 to 110 have no targets`,
      ],
    ],
    [
      [
        [`${ADULT}.id`, "child"],
        ["targets.unknownAge.value", "child"],
      ],
      [`${ADULT}.id: the population "child" is used at ${CHILD}.id already`],
    ],
    [
      [["targets.unknownAge.value", "old"]],
      ['targets.unknownAge.value: no population is called "old"; there are: child, adult'],
    ],
  ],
  floors: [
    [[[`${ADULT}.mapMmHg.critical.value`, 90]], [`${ADULT}.mapMmHg.critical.value: 90 must be below the target of 90`]],
    [[[`${ADULT}.mapMmHg.critical.value`, 91]], [`${ADULT}.mapMmHg.critical.value: 91 is above the target of 90`]],
    [[[`${ADULT}.mapMmHg.critical.value`, 89]], []],
    // No alert watches systolic or CPP in this file: their limits may be equal.
    [[[`${ADULT}.sbpMmHg.critical.value`, 110]], []],
    [[[`${ADULT}.sbpMmHg.critical.value`, 111]], [`${ADULT}.sbpMmHg.critical.value: 111 is above the target of 110`]],
    [[[`${ADULT}.cppMmHg.critical.value`, 60]], []],
    [[[`${ADULT}.cppMmHg.critical.value`, 61]], [`${ADULT}.cppMmHg.critical.value: 61 is above the target of 60`]],
    [[["targets.spo2Pct.critical.value", 94]], ["targets.spo2Pct.critical.value: 94 must be below the target of 94"]],
    [
      [
        ["targets.spo2Pct.critical.value", 94],
        ["alerts[1].bands[0].inclusive", false],
      ],
      [],
    ],
    [
      [
        [`${ADULT}.sbpMmHg.target.value`, 301],
        [`${BLEED}.high`, 300],
      ],
      [
        `${ADULT}.sbpMmHg.target.value: 301 is outside 30 to 300`,
        `${BLEED}.high: 300 is not above the target of 301 for an adult: no pressure would meet both`,
      ],
    ],
    [[[`${ADULT}.mapMmHg.critical.value`, 19]], [`${ADULT}.mapMmHg.critical.value: 19 is outside 20 to 250`]],
    [[["targets.spo2Pct.target.value", 101]], ["targets.spo2Pct.target.value: 101 is outside 40 to 100"]],
    [[[`${ADULT}.icpTreatAboveMmHg.value`, 101]], [`${ADULT}.icpTreatAboveMmHg.value: 101 is outside 0 to 100`]],
    [
      [[`${ADULT}.cppMmHg.noGainAbove.value`, 59]],
      [`${ADULT}.cppMmHg.noGainAbove.value: 59 is below the target of 60`],
    ],
    [[[`${ADULT}.cppMmHg.noGainAbove.value`, 60]], []],
    [[[`${ADULT}.cppMmHg.noGainAbove.value`, 251]], [`${ADULT}.cppMmHg.noGainAbove.value: 251 is outside 20 to 250`]],
  ],
  "limits that grow with age, at both ends of the band": [
    // 0 and 14 whole years: 80 + 2 × 14 = 108.
    [
      [
        [`${CHILD}.sbpMmHg.target.value`, { base: 20, perYear: 10 }],
        [`${CHILD}.sbpMmHg.critical.value`, { base: 20, perYear: 9 }],
      ],
      [
        `${CHILD}.sbpMmHg.target.value: at age 0, 20 is outside 30 to 300`,
        `${CHILD}.sbpMmHg.critical.value: at age 0, 20 is outside 30 to 300`,
      ],
    ],
    [
      [[`${CHILD}.sbpMmHg.critical.value`, { base: 70, perYear: 3 }]],
      [`${CHILD}.sbpMmHg.critical.value: at age 14, 112 is above the target of 108`],
    ],
    [[[`${CHILD}.sbpMmHg.critical.value`, { base: 66, perYear: 3 }]], []],
    [
      [[`${CHILD}.cppMmHg.target.value`, { base: 40, perYear: 2 }]],
      [`${CHILD}.cppMmHg.noGainAbove.value: 65 is below the target of 68`],
    ],
    [[[`${CHILD}.cppMmHg.target.value`, { base: 40, perYear: 1.5 }]], []],
    [
      [
        [`${CHILD}.belowAgeA`, 14.5],
        [`${ADULT}.fromAgeA`, 14.5],
        [`${CHILD}.sbpMmHg.critical.value`, { base: 70, perYear: 3 }],
      ],
      [`${CHILD}.sbpMmHg.critical.value: at age 14, 112 is above the target of 108`],
    ],
  ],
  causes: [
    [[[`${BLEED}.aim`, 129]], [`${BLEED}.aim: 129 is below the low end of 130`]],
    [[[`${BLEED}.aim`, 151]], [`${BLEED}.high: 150 is below the aim of 151`]],
    [[[`${BLEED}.aim`, 130]], []],
    [[[`${BLEED}.aim`, 150]], []],
    [[[`${BLEED}.low`, 29]], [`${BLEED}.low: 29 is outside 30 to 300`]],
    [[[`${BLEED}.high`, 301]], [`${BLEED}.high: 301 is outside 30 to 300`]],
    [
      [[`${ADULT}.sbpMmHg.target.value`, 150]],
      [`${BLEED}.high: 150 is not above the target of 150 for an adult: no pressure would meet both`],
    ],
    [[[`${ADULT}.sbpMmHg.target.value`, 149]], []],
    // The ranges are for adults: a child's floor does not meet them.
    [[[`${CHILD}.sbpMmHg.target.value`, 160]], []],
    [[["targets.causes[0].id", "injury"]], ['targets.causes: has no cause "unknown", which counts until one is said']],
    [
      [["targets.causes[2]", bleed]],
      ['targets.causes[2].id: the cause "bleed" is used at targets.causes[1].id already'],
    ],
  ],
  herniation: [
    [
      [["targets.herniation.assumedIcpMmHg.value", 101]],
      ["targets.herniation.assumedIcpMmHg.value: 101 is outside 0 to 100"],
    ],
    // 250 is the highest mean that is believed.
    [
      [
        [`${ADULT}.cppMmHg.target.value`, 190],
        [`${ADULT}.cppMmHg.noGainAbove.value`, 190],
        ["targets.herniation.assumedIcpMmHg.value", 61],
        ["alerts", []],
      ],
      [
        "targets.herniation.assumedIcpMmHg.value: asks for a mean pressure of 251, and 250 is the highest that is believed",
      ],
    ],
    [
      [
        [`${ADULT}.cppMmHg.target.value`, 190],
        [`${ADULT}.cppMmHg.noGainAbove.value`, 190],
        ["targets.herniation.assumedIcpMmHg.value", 60],
        ["alerts", []],
      ],
      [],
    ],
    [[["targets.herniation.sbpMmHg.value", 29]], ["targets.herniation.sbpMmHg.value: 29 is outside 30 to 300"]],
    // The ceiling of a bleed is 150; it counts on only where herniation does not lift it.
    [[["targets.herniation.sbpMmHg.value", 150]], []],
    [
      [
        ["targets.herniation.sbpMmHg.value", 150],
        ["targets.herniationSparesPressure.value", false],
      ],
      [
        "targets.herniation.sbpMmHg.value: 150 is not under the ceiling of 150, which herniation does not lift here: no pressure would meet both",
      ],
    ],
    [
      [
        ["targets.herniation.sbpMmHg.value", 149],
        ["targets.herniationSparesPressure.value", false],
      ],
      [],
    ],
  ],
  ranges: [
    [
      [["targets.etco2MmHg.usual.value.high", 34]],
      ["targets.etco2MmHg.usual.value.high: 34 is below the low end of 35"],
    ],
    [[["targets.etco2MmHg.usual.value.high", 35]], []],
    [
      [["targets.etco2MmHg.herniation.value.low", 4]],
      ["targets.etco2MmHg.herniation.value.low: 4 is outside 5 to 120"],
    ],
    [[["targets.paco2MmHg.value.low", 46]], ["targets.paco2MmHg.value.high: 45 is below the low end of 46"]],
    [[["targets.pao2MmHg.value.low", 121]], ["targets.pao2MmHg.value.high: 120 is below the low end of 121"]],
    [
      [["targets.tempCel.treatFrom.value", 37.4]],
      ["targets.tempCel.treatFrom.value: 37.4 is inside the range to be held, up to 37.5"],
    ],
    [[["targets.tempCel.treatFrom.value", 37.5]], []],
    [[["targets.tempCel.treatFrom.value", 44]], ["targets.tempCel.treatFrom.value: 44 is outside 25 to 43"]],
    [[["targets.tempCel.hold.value.low", 24]], ["targets.tempCel.hold.value.low: 24 is outside 25 to 43"]],
    [
      [["targets.glucoseMmolPerL.treatBelow.value", 6.1]],
      ["targets.glucoseMmolPerL.treatBelow.value: 6.1 is inside the range to be held, from 6"],
    ],
    [[["targets.glucoseMmolPerL.treatBelow.value", 6]], []],
    [
      [["targets.glucoseMmolPerL.treatBelow.value", 0.9]],
      ["targets.glucoseMmolPerL.treatBelow.value: 0.9 is outside 1 to 50"],
    ],
    [
      [["targets.glucoseMmolPerL.hold.value.high", 51]],
      ["targets.glucoseMmolPerL.hold.value.high: 51 is outside 1 to 50"],
    ],
    [
      [["targets.sodiumMmolPerL.value.low", 156]],
      ["targets.sodiumMmolPerL.value.high: 155 is below the low end of 156"],
    ],
    [[["assumedIcpMmHg.value.low", 31]], ["assumedIcpMmHg.value.high: 30 is below the low end of 31"]],
    [[["assumedIcpMmHg.value.high", 101]], ["assumedIcpMmHg.value.high: 101 is outside 0 to 100"]],
  ],
};
