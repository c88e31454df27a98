import { describe, expect, it } from "vitest";
import type { Confounder } from "../../src/core/herniation.ts";
import { askRescue } from "../../src/language/sentences/rescue.ts";
import { selectTargets } from "../../src/log/targets.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import { newSign, seenSigns, type SeenSign } from "../../src/rules/herniationWatch.ts";
import { CaseBuilder } from "../log/caseBuilder.ts";

const SAID = { heard: "as said", by: "typed" } as const;
const { trend } = defaultProtocol;
const watching: Protocol = {
  ...defaultProtocol,
  trend: { ...trend, cushing: { ...trend.cushing, enabled: { ...trend.cushing.enabled, value: true } } },
};

const signsOf = (b: CaseBuilder, protocol = defaultProtocol): readonly string[] =>
  seenSigns(b.state, protocol).map((s) => [s.sign, ...("how" in s ? [s.how] : [])].join(" "));

type Row = readonly [name: string, build: (b: CaseBuilder) => void, signs: readonly string[]];
const dilatedMm = trend.pupilDilatedFromMm.value;

const ROWS: readonly Row[] = [
  ["a pupil at the limit is wide", (b) => void b.say({ pupilLeft: dilatedMm }), ["leftPupil dilated"]],
  ["a pupil under it is not", (b) => void b.say({ pupilLeft: dilatedMm - 0.5 }), []],
  ["a fixed pupil without a size", (b) => void b.find({ code: "pupilRight", finding: "fixed" }), ["rightPupil fixed"]],
  ["unequal by more than the limit", (b) => void b.say({ pupilLeft: 4.5, pupilRight: 3 }), ["unequal"]],
  ["unequal by the limit itself", (b) => void b.say({ pupilLeft: 4, pupilRight: 3 }), []],
  [
    "one wide pupil is not called unequal too",
    (b) => void b.say({ pupilLeft: 6, pupilRight: 3 }),
    ["leftPupil dilated"],
  ],
  ["extension", (b) => void b.say({ gcsMotor: 2 }), ["motor"]],
  ["withdrawal", (b) => void b.say({ gcsMotor: 4 }), []],
  [
    "a fall of two points from under nine",
    (b) => {
      b.say({ gcsEye: 2, gcsVerbal: 2, gcsMotor: 4 });
      b.say({ gcsEye: 1, gcsVerbal: 1, gcsMotor: 4 });
    },
    ["gcsFall"],
  ],
  [
    "a fall of one point",
    (b) => {
      b.say({ gcsEye: 2, gcsVerbal: 2, gcsMotor: 4 });
      b.say({ gcsEye: 1, gcsVerbal: 2, gcsMotor: 4 });
    },
    [],
  ],
  [
    "a fall in two steps",
    (b) => {
      b.say({ gcsEye: 2, gcsVerbal: 2, gcsMotor: 4 });
      b.say({ gcsEye: 1 });
      b.say({ gcsVerbal: 1 });
    },
    ["gcsFall"],
  ],
  [
    "a fall from nine",
    (b) => {
      b.say({ gcsEye: 2, gcsVerbal: 2, gcsMotor: 5 });
      b.say({ gcsEye: 1, gcsVerbal: 1, gcsMotor: 5 });
    },
    [],
  ],
  [
    "the pressure pattern while its rule is off",
    (b) => {
      b.say({ sbp: 120, dbp: 80, hr: 90 });
      b.say({ sbp: 180, dbp: 80, hr: 50 });
    },
    [],
  ],
];

describe("signs of herniation", () => {
  it.each(ROWS)("%s", (_name, build, signs) => {
    const b = new CaseBuilder();
    build(b);
    expect(signsOf(b)).toEqual(signs);
  });

  it("sees the pressure pattern where the protocol has it switched on", () => {
    const b = new CaseBuilder();
    b.say({ sbp: 120, dbp: 80, hr: 90 });
    expect(signsOf(b, watching)).toEqual([]);
    b.say({ sbp: 180, dbp: 80, hr: 50 });
    expect(signsOf(b, watching)).toEqual(["cushing"]);
  });

  it("asks about what is new, and about nothing while the rescue runs", () => {
    const b = new CaseBuilder();
    const before = b.state;
    b.say({ pupilLeft: 6 });
    const after = b.state;
    expect(newSign(before, after, defaultProtocol)?.signs).toEqual([{ sign: "leftPupil", how: "dilated" }]);
    b.say({ pupilLeft: 6 });
    expect(newSign(after, b.state, defaultProtocol)).toBeUndefined();
    b.add({ type: "rescue.started", ...SAID });
    const running = b.state;
    b.say({ gcsMotor: 1 });
    expect(newSign(running, b.state, defaultProtocol)).toBeUndefined();
  });

  it("names what is there before what nobody ruled out, and no eye drug for a motor score", () => {
    const b = new CaseBuilder();
    const before = b.state;
    b.say({ gcsMotor: 1, spo2: 85 });
    expect(newSign(before, b.state, defaultProtocol)?.thinkOf).toEqual({ confounder: "hypoxia", present: true });
  });

  it("suspends the ceiling of a bleed and raises the floors while the rescue runs, until there is no herniation", () => {
    const b = new CaseBuilder();
    b.patient({ cause: "bleed" });
    expect(selectTargets(b.state, defaultProtocol).sbpMmHg.ceiling).toBeDefined();
    b.add({ type: "rescue.started", ...SAID });
    const targets = selectTargets(b.state, defaultProtocol);
    expect(targets.sbpMmHg.ceiling).toBeUndefined();
    expect(targets.etco2MmHg.path).toBe("targets.etco2MmHg.herniation");
    b.add({ type: "prompt.announced", promptId: "rescueOver", key: String(b.state.care.rescue?.seq), text: "as said" });
    expect(selectTargets(b.state, defaultProtocol).etco2MmHg.path).toBe("targets.etco2MmHg.usual");
    expect(selectTargets(b.state, defaultProtocol).sbpMmHg.ceiling).toBeUndefined();
    b.patient({ herniation: false });
    expect(selectTargets(b.state, defaultProtocol).sbpMmHg.ceiling).toBeDefined();
  });

  const SIGNS: readonly (readonly SeenSign[])[] = [
    [{ sign: "leftPupil", how: "dilated" }],
    [
      { sign: "leftPupil", how: "fixed" },
      { sign: "rightPupil", how: "dilated" },
    ],
    [{ sign: "unequal" }],
    [{ sign: "motor", score: 1 }],
    [{ sign: "gcsFall" }],
    [{ sign: "cushing" }],
    [{ sign: "said" }],
  ];
  const CONFOUNDERS: readonly Confounder[] = [
    "pupil-drugs",
    "eye-injury",
    "hypoxia",
    "hypotension",
    "hypoglycaemia",
    "seizure",
  ];

  it.each(SIGNS)("asks in at most fifteen words: %j", (...signs) => {
    for (const confounder of CONFOUNDERS)
      for (const present of [true, false]) {
        const words = askRescue(signs, { confounder, present }).split(" ");
        expect(words.length, words.join(" ")).toBeLessThanOrEqual(15);
      }
  });
});
