import type { CaseMeasures } from "../../export/measures/caseMeasures.ts";
import { DEFINITIONS } from "../../export/measures/definitions.ts";
import type { BelowFloor, FloorId } from "../../export/measures/floors.ts";
import { valueIn, type Measured } from "../../export/measures/measured.ts";

/** A figure of the service: what one case gives to it, as a number; NaN where that is not known of the case. */
export type Figure = { readonly name: string; readonly of: (m: CaseMeasures) => number };

const { withoutLow, postIntubation } = DEFINITIONS;

const numberOr = (value: number | undefined): number => value ?? NaN;

/** 1 for yes, 0 for no. */
function yesOrNo<T>(measured: Measured<T>, isYes: (value: T) => boolean): number {
  return "value" in measured ? Number(isYes(measured.value)) : NaN;
}

const floor = (m: CaseMeasures, id: FloorId): BelowFloor | undefined => {
  const found = m.floors.find((one) => one.id === id);
  return found && valueIn(found.below);
};

export const LOW_AFTER_TUBE: Figure = {
  name: `SBP under ${postIntubation.value.sbpBelowMmHg} within ${postIntubation.value.withinMin} min of the tube`,
  of: (m) => yesOrNo(m.postIntubation, ({ low }) => low),
};

/** Whether a case was watched as long as the definition looks: a "no" to `LOW_AFTER_TUBE` rests on it. */
export const WATCHED_AFTER_TUBE: Figure = {
  name: "watched all that time",
  of: (m) => yesOrNo(m.postIntubation, ({ watchedMin, ofMin }) => watchedMin >= ofMin),
};

/** Of how many cases it is so: 1 or 0 of each. */
export const SHARES: readonly Figure[] = [
  { name: "first pass", of: (m) => yesOrNo(m.firstPass, (is) => is) },
  {
    name: `first pass, SpO2 not under ${withoutLow.value.spo2BelowPct} %, SBP not under ${withoutLow.value.sbpBelowMmHg}`,
    of: (m) => yesOrNo(m.firstPassWithoutLow, (is) => is),
  },
  LOW_AFTER_TUBE,
  { name: "a step waived", of: (m) => yesOrNo(m.waived, (steps) => steps.length > 0) },
];

/** What has a median; the unit stands last. */
export const AMOUNTS: readonly Figure[] = [
  { name: "attempts", of: (m) => numberOr(valueIn(m.attempts)?.length) },
  { name: "lowest SBP around induction, mmHg", of: (m) => numberOr(valueIn(m.around.sbp)?.value) },
  { name: "lowest MAP around induction, mmHg", of: (m) => numberOr(valueIn(m.around.map)?.value) },
  { name: "lowest CPP around induction, mmHg", of: (m) => numberOr(valueIn(m.around.cpp)?.value) },
  { name: "lowest SpO2 around induction, %", of: (m) => numberOr(valueIn(m.around.spo2)?.value) },
  { name: "SBP under target, min", of: (m) => numberOr(floor(m, "sbpTarget")?.belowMin) },
  { name: "SBP under target, mmHg·min", of: (m) => numberOr(floor(m, "sbpTarget")?.doseMmHgMin) },
  { name: "SBP under the published floor, mmHg·min", of: (m) => numberOr(floor(m, "sbpPublished")?.doseMmHgMin) },
  { name: "MAP under target, min", of: (m) => numberOr(floor(m, "mapTarget")?.belowMin) },
  { name: "MAP under target, mmHg·min", of: (m) => numberOr(floor(m, "mapTarget")?.doseMmHgMin) },
  { name: "CPP under target, min", of: (m) => numberOr(floor(m, "cppTarget")?.belowMin) },
  { name: "CPP under target, mmHg·min", of: (m) => numberOr(floor(m, "cppTarget")?.doseMmHgMin) },
  { name: "tube to sedation, min", of: (m) => numberOr(valueIn(m.sedationMin)) },
  { name: "CO2 under its band, min", of: (m) => numberOr(valueIn(m.overVentilation)?.belowMin) },
];
