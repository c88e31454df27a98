import type { Formula, Source } from "../derivation.ts";
import { ARITHMETIC, COMMON_PRACTICE, fromMemory } from "./sources.ts";

const POSITION_STATEMENT: Source = {
  reference:
    "NACCS and SBNS councils, joint position statement on calculating CPP in traumatic brain injury, Br J Anaesth 2015, page 488",
  kind: "guideline",
  primaryRead: true,
};
const ALGEBRA = fromMemory("algebra of CPP = MAP − ICP");
const PHYSICS = fromMemory("pressure of a column of blood at 1.06 g/mL; full height overstates the effect");

/** How each result about pressure is worked out; keys are the functions' names. */
export const pressureFormulas = {
  meanArterialPressure: {
    name: "one-third rule",
    expression: "DBP + (SBP − DBP) / 3",
    source: fromMemory("one-third rule, a standard form; it reads 5.0 mmHg low on average (PMID 32694334)"),
  },
  meanArterialPressureWithRate: {
    name: "mean arterial pressure with heart rate",
    expression: "DBP + (0.33 + 0.0012 × HR) × (SBP − DBP)",
    source: {
      reference:
        "Razminia M et al., validation of a new formula for mean arterial pressure, Catheter Cardiovasc Interv 2004;63:419-425, doi:10.1002/ccd.20217",
      kind: "trial",
      primaryRead: true,
    },
  },
  meanDisagreement: {
    name: "difference of the computed from the measured mean",
    expression: "computed MAP − measured MAP",
    source: COMMON_PRACTICE,
  },
  pulsePressure: { name: "pulse pressure", expression: "SBP − DBP", source: fromMemory("definition") },
  cerebralPerfusionPressure: {
    name: "cerebral perfusion pressure",
    expression: "MAP − ICP",
    source: POSITION_STATEMENT,
  },
  levelledCpp: {
    name: "cerebral perfusion pressure with its level",
    expression: "MAP − ICP, both zeroed at the tragus",
    source: POSITION_STATEMENT,
  },
  mapForCpp: { name: "mean pressure for the perfusion target", expression: "CPP target + ICP", source: ALGEBRA },
  icpAtWhichCppMeets: {
    name: "ICP over which perfusion is under target",
    expression: "MAP − CPP target",
    source: ALGEBRA,
  },
  cppRange: {
    name: "perfusion pressure for an assumed ICP",
    expression: "MAP − highest assumed ICP, to MAP − lowest assumed ICP",
    source: COMMON_PRACTICE,
  },
  deficit: { name: "deficit", expression: "target − value", source: ARITHMETIC },
  perfusionMargin: {
    name: "room left above target",
    expression: "the smaller of MAP − MAP target and CPP − CPP target",
    source: ARITHMETIC,
  },
  hydrostaticMmHg: {
    name: "pressure of a column of blood",
    expression: "1.06 g/mL × 9.80665 m/s² × height",
    source: PHYSICS,
  },
  verticalHeightCm: {
    name: "height of the tragus above the heart",
    expression: "length along the back × sin(tilt)",
    source: fromMemory("geometry"),
  },
  mapAtBrainLevelMmHg: {
    name: "mean pressure at the level of the brain",
    expression: "MAP − 0.780 mmHg/cm × height of the tragus above the transducer",
    source: PHYSICS,
  },
  shockIndex: {
    name: "shock index",
    expression: "HR / SBP",
    source: {
      reference: "Althunayyan SM, review of the shock index, Bull Emerg Trauma 2019;7:21-27, doi:10.29252/beat-070103",
      kind: "textbook",
      primaryRead: true,
    },
  },
  modifiedShockIndex: {
    name: "modified shock index",
    expression: "HR / MAP",
    source: fromMemory("HR / MAP; compared with two others in Am J Emerg Med 2019, PMID 31345593"),
  },
  ageShockIndex: {
    name: "age shock index",
    expression: "age × HR / SBP",
    source: fromMemory("age × shock index; compared with two others in Am J Emerg Med 2019, PMID 31345593"),
  },
} as const satisfies Record<string, Formula>;
