import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { herniationSigns, type HerniationFindings, type HerniationLimits } from "../../src/core/herniation.ts";
import type { PupilReaction } from "../../src/core/pupils.ts";
import type { Mm, MmHg, MmolPerL, Percent } from "../../src/core/quantity.ts";

const LIMITS: HerniationLimits = {
  dilatedFromMm: 5,
  pupilDifferenceMm: 1,
  hypoxiaBelowPct: 90,
  hypotensionBelowMmHg: 110,
  hypoglycaemiaBelowMmolPerL: 4,
};
const ALL = ["pupil-drugs", "eye-injury", "hypoxia", "hypotension", "hypoglycaemia", "seizure"];
const pupil = (sizeMm?: number, reaction?: PupilReaction) => ({ sizeMm: sizeMm as Mm | undefined, reaction });
const signs = (findings: HerniationFindings) => herniationSigns(findings, LIMITS).signs;
const well: HerniationFindings = {
  pupils: { left: pupil(3, "brisk"), right: pupil(3, "brisk") },
  motor: 6,
  gcsFell: false,
  cushingPattern: false,
  abnormalBreathing: false,
  pupilDrugs: false,
  eyeInjury: false,
  seizure: false,
  spo2Pct: 98 as Percent,
  sbpMmHg: 130 as MmHg,
  glucoseMmolPerL: 6 as MmolPerL,
};

describe("signs", () => {
  it("none in a well patient, and nothing to ask", () => {
    expect(herniationSigns(well, LIMITS)).toEqual({ signs: [], confounders: [], toAsk: [] });
  });
  it("none where nothing was examined, and everything to ask", () => {
    expect(herniationSigns({}, LIMITS)).toEqual({ signs: [], confounders: [], toAsk: ALL });
  });
  it.each([
    [pupil(5), pupil(5), ["both-pupils-dilated-or-fixed"]],
    [pupil(4.9), pupil(4.9), []],
    [pupil(5), pupil(4), ["one-pupil-dilated-or-fixed"]],
    [pupil(4), pupil(5), ["one-pupil-dilated-or-fixed"]],
    [pupil(3), pupil(6), ["one-pupil-dilated-or-fixed", "pupils-unequal"]],
    [pupil(3, "fixed"), pupil(3, "brisk"), ["one-pupil-dilated-or-fixed"]],
    [pupil(undefined, "fixed"), undefined, ["one-pupil-dilated-or-fixed"]],
    [undefined, pupil(7), ["one-pupil-dilated-or-fixed"]],
    [pupil(3, "fixed"), pupil(6, "sluggish"), ["both-pupils-dilated-or-fixed", "pupils-unequal"]],
    [pupil(2), pupil(4), ["pupils-unequal"]],
    [pupil(3, "sluggish"), pupil(4, "sluggish"), []],
  ] as const)("pupils %j and %j: %j", (left, right, expected) => {
    expect(signs({ ...well, pupils: { left, right } })).toEqual(expected);
  });
  it.each([
    [1, ["no-motor-response"]],
    [2, ["extensor-posturing"]],
    [3, []],
    [6, []],
    ["not-testable", []],
  ] as const)("motor %s: %j", (motor, expected) => expect(signs({ ...well, motor })).toEqual(expected));
  it.each([
    ["gcsFell", "gcs-fall"],
    ["cushingPattern", "cushing-pattern"],
    ["abnormalBreathing", "abnormal-breathing"],
  ] as const)("%s is the sign %s", (finding, sign) => expect(signs({ ...well, [finding]: true })).toEqual([sign]));
  it("come in a fixed order, whatever the order of the findings", () => {
    const pupils = { right: pupil(8, "fixed"), left: pupil(3) };
    expect(signs({ abnormalBreathing: true, cushingPattern: true, gcsFell: true, motor: 2, pupils })).toEqual([
      "one-pupil-dilated-or-fixed",
      "pupils-unequal",
      "extensor-posturing",
      "gcs-fall",
      "cushing-pattern",
      "abnormal-breathing",
    ]);
  });
});

describe("confounders", () => {
  it.each([
    [{ pupilDrugs: true }, "pupil-drugs"],
    [{ eyeInjury: true }, "eye-injury"],
    [{ seizure: true }, "seizure"],
    [{ spo2Pct: 89 as Percent }, "hypoxia"],
    [{ sbpMmHg: 109 as MmHg }, "hypotension"],
    [{ glucoseMmolPerL: 3.9 as MmolPerL }, "hypoglycaemia"],
  ] as const)("%j is %s", (found, confounder) => {
    expect(herniationSigns({ ...well, ...found }, LIMITS)).toEqual({ signs: [], confounders: [confounder], toAsk: [] });
  });
  it("at its limit a value is none", () => {
    const at = { spo2Pct: 90 as Percent, sbpMmHg: 110 as MmHg, glucoseMmolPerL: 4 as MmolPerL };
    expect(herniationSigns({ ...well, ...at }, LIMITS).confounders).toEqual([]);
  });
  it.each([
    ["pupilDrugs", "pupil-drugs"],
    ["eyeInjury", "eye-injury"],
    ["seizure", "seizure"],
    ["spo2Pct", "hypoxia"],
    ["sbpMmHg", "hypotension"],
    ["glucoseMmolPerL", "hypoglycaemia"],
  ] as const)("without %s, %s is to be asked", (finding, confounder) => {
    expect(herniationSigns({ ...well, [finding]: undefined }, LIMITS)).toEqual({
      signs: [],
      confounders: [],
      toAsk: [confounder],
    });
  });
});

describe("properties", () => {
  const anyPupil = fc.record({
    sizeMm: fc.option(
      fc.double({ min: 1, max: 9, noNaN: true }).map((n) => n as Mm),
      { nil: undefined },
    ),
    reaction: fc.constantFrom<PupilReaction | undefined>("reactive", "brisk", "sluggish", "fixed", undefined),
  });
  const maybe = fc.constantFrom(true, false, undefined);
  const anyFindings: fc.Arbitrary<HerniationFindings> = fc.record({
    pupils: fc.record({ left: anyPupil, right: anyPupil }),
    motor: fc.constantFrom<HerniationFindings["motor"]>(1, 2, 3, 4, 5, 6, "not-testable", undefined),
    gcsFell: maybe,
    cushingPattern: maybe,
    abnormalBreathing: maybe,
    pupilDrugs: maybe,
    eyeInjury: maybe,
    seizure: maybe,
  });
  it("left and right may be exchanged; the confounders change no sign", () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        const { left, right } = findings.pupils ?? {};
        const { pupilDrugs: _d, eyeInjury: _e, seizure: _s, ...bare } = findings;
        expect(signs({ ...bare, pupils: { left: right, right: left } })).toEqual(signs(findings));
      }),
    );
  });
  it("one more finding takes no sign away but that of the one pupil", () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        const more = signs({ ...findings, gcsFell: true, cushingPattern: true, abnormalBreathing: true });
        for (const sign of signs(findings)) expect(more).toContain(sign);
      }),
    );
  });
  it("a confounder is present, ruled out or to be asked: never two of them", () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        const { confounders, toAsk } = herniationSigns(findings, LIMITS);
        expect(confounders.filter((c) => toAsk.includes(c))).toEqual([]);
      }),
    );
  });
});
