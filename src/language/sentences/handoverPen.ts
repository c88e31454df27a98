import { VITALS } from "../../core/vitals.ts";
import type { FindingEntry, VitalEntry } from "../../log/caseState.ts";
import type { GivenDrug, Low } from "../../log/handover.ts";
import type { StepValue } from "../../log/facts.ts";
import type { Perfusion } from "../../log/perfusion.ts";
import type { Clock } from "../../rules/clock.ts";
import type { SaidAmount } from "../../log/careFacts.ts";
import type { Unconfirmed } from "../../log/unconfirmed.ts";
import { sayAmount, sayAmountSafely, sayMl } from "./amount.ts";
import { sayClocks, showClocks } from "./clock.ts";
import { sayAgeSafely } from "./howOld.ts";
import { EMPTY_UNKNOWN, sayInfusionForHandover, type SetInfusion } from "./infusion.ts";
import { roundedDose, sayNumber, showAmount } from "./number.ts";
import { sayRecorded, showRecorded, type UsualUnits } from "./recordedValue.ts";
import { saySafely } from "./safeNumber.ts";
import { showEmpty, showGivenTotal, showInfusion } from "./shownDose.ts";
import { sayCpp, sayMap } from "./status.ts";
import { sayStepValue, showStepValue } from "./stepValue.ts";
import { sayUnconfirmedStatement, showUnconfirmedStatement } from "./unconfirmed.ts";
import { sayPressure, showAge, showPressure, showValue } from "./vital.ts";

/** How the parts of a handover are put down: spoken or printed. What is said and in which order is the same for both. */
export type Pen = {
  readonly count: (n: number) => string;
  readonly minutes: (n: number) => string;
  /** Digit by digit alone where it sounds like another number. */
  readonly minutesOnce: (n: number) => string;
  readonly low: (low: Low) => string;
  readonly entry: (entry: VitalEntry | FindingEntry) => string;
  /** Two pupils that are alike, from what is said of the left one. */
  readonly bothPupils: (left: string) => string;
  readonly ago: (ageMs: number) => string;
  /** The age of numbers, after the last of them: aloud not as if it were one more. */
  readonly taken: (ageMs: number) => string;
  readonly given: (name: string, total: GivenDrug["total"]) => string;
  readonly givenBriefly: (name: string, total: GivenDrug["total"]) => string;
  readonly fluid: (label: string, volumeMl: number) => string;
  readonly step: (value: StepValue) => string;
  readonly perfusion: (perfusion: Perfusion) => readonly string[];
  /** The numbers without their targets, and no CPP that nobody measured. */
  readonly perfusionBriefly: (perfusion: Perfusion) => readonly string[];
  /** Whole, then in fewer words each time; the last of several has no rate. */
  readonly infusion: (name: string, set: SetInfusion, emptyInMs: number | undefined) => readonly string[];
  /** Empty where it says nothing of the patient. */
  readonly unconfirmed: (one: Unconfirmed, nameOf: (id: string) => string) => string;
  readonly due: (clock: Clock, nowMs: number) => string;
};

/** Over this age nobody is told apart: the record holds no age above it. */
const OLDEST_A = 89;
const isOldest = (entry: VitalEntry | FindingEntry): boolean =>
  "value" in entry && entry.code === "age" && entry.value > OLDEST_A;
const withReaction = (words: string, { reaction }: VitalEntry): string =>
  reaction === undefined ? words : `${words} ${reaction}`;
const found = (name: string, { finding }: FindingEntry): string => `${name} ${finding.replace("-", " ")}`;

const JUST_NOW = "just now";
function sayAgo(ageMs: number): string {
  const age = sayAgeSafely(ageMs);
  return age === "now" ? JUST_NOW : `${age} ago`;
}

const both = (left: string): string => left.replace(/^left pupil/iu, "both pupils");

/** "Ketamine one ten, one one zero, milligrams"; of several doses how many. */
const sayTotal =
  (sayIt: (amount: SaidAmount) => string) =>
  (name: string, total: GivenDrug["total"]): string => {
    if (!total.ok) return `${name} given in units that have no sum`;
    const { value, unit, count } = total.value;
    const times = count === 1 ? "" : `, ${sayNumber(count, 0)} doses`;
    return `${name} ${sayIt({ value: roundedDose(value), unit })}${times}`;
  };

/** The measured ones alone. */
const measured = ({ map, cpp }: Perfusion, say: (mmHg: number) => string): readonly string[] => [
  ...(map ? [`MAP ${say(map.mapMmHg)}`] : []),
  ...(cpp.kind === "measured" ? [`CPP ${say(cpp.cppMmHg)}`] : []),
];

export const spokenPen = (usual: UsualUnits): Pen => ({
  count: (n) => sayNumber(n, 0),
  minutes: (n) => sayAgeSafely(n * 60_000),
  // "Nineteen, one nine, minutes" without its first way, which was heard as ninety.
  minutesOnce: (n) => sayAgeSafely(n * 60_000).replace(/^[^,]+, ([^,]+),/u, "$1"),
  low: ({ code, lowestMmHg }) =>
    `${code === "cpp" ? "CPP" : VITALS[code].spokenName} ${saySafely(code === "cpp" ? "map" : code, lowestMmHg, "mmHg", 0)}`,
  entry: (entry) => {
    if (isOldest(entry)) return `age over ${sayNumber(OLDEST_A, 0)}`;
    return "value" in entry
      ? withReaction(sayRecorded(entry, usual), entry)
      : found(VITALS[entry.code].spokenName, entry);
  },
  bothPupils: both,
  ago: sayAgo,
  taken: (ageMs) => {
    const ago = sayAgo(ageMs);
    return ago === JUST_NOW ? ago : `taken ${ago}`;
  },
  given: sayTotal(sayAmount),
  givenBriefly: sayTotal(sayAmountSafely),
  fluid: (label, volumeMl) => `${label} ${sayMl(volumeMl)}`,
  step: sayStepValue,
  perfusion: ({ pressure, map, cpp }) => [
    ...(pressure ? [sayPressure(pressure.sbp, pressure.dbp)] : []),
    ...(map ? [sayMap(map, saySafely("map", map.mapMmHg, "mmHg", 0)), sayCpp(cpp) ?? ""] : []),
  ],
  perfusionBriefly: (perfusion) => [
    ...(perfusion.pressure ? [sayPressure(perfusion.pressure.sbp, perfusion.pressure.dbp)] : []),
    ...measured(perfusion, (mmHg) => saySafely("map", mmHg, "mmHg", 0)),
  ],
  infusion: sayInfusionForHandover,
  unconfirmed: sayUnconfirmedStatement,
  due: (clock, nowMs) => sayClocks([clock], nowMs),
});

export const printedPen = (usual: UsualUnits): Pen => ({
  count: String,
  minutes: (n) => `${n} min`,
  minutesOnce: (n) => `${n} min`,
  low: ({ code, lowestMmHg }) =>
    `${code === "cpp" ? "CPP" : VITALS[code].label} ${showValue(code === "cpp" ? "map" : code, lowestMmHg)}`,
  entry: (entry) => {
    if (isOldest(entry)) return `Age over ${OLDEST_A}`;
    const { label } = VITALS[entry.code];
    return "value" in entry ? withReaction(`${label} ${showRecorded(entry, usual)}`, entry) : found(label, entry);
  },
  bothPupils: both,
  ago: showAge,
  taken: showAge,
  given: (name, total) => `${name}: ${showGivenTotal(total)}`,
  givenBriefly: (name, total) => `${name}: ${showGivenTotal(total)}`,
  fluid: (label, volumeMl) => `${label} ${showAmount(volumeMl)} mL`,
  step: showStepValue,
  perfusion: ({ pressure, map, cpp }) => [
    ...(pressure ? [showPressure(pressure.sbp, pressure.dbp)] : []),
    ...(map ? [`MAP ${showValue("map", map.mapMmHg)}, target ${showAmount(map.targetMmHg)}`] : []),
    ...(cpp.kind === "measured" ? [`CPP ${showValue("map", cpp.cppMmHg)}, target ${showAmount(cpp.targetMmHg)}`] : []),
    ...(cpp.kind === "bounded"
      ? [`If ICP ${showAmount(cpp.assumedIcp.low)}, CPP ${showValue("map", cpp.highMmHg)}`]
      : []),
  ],
  perfusionBriefly: (perfusion) => [
    ...(perfusion.pressure ? [showPressure(perfusion.pressure.sbp, perfusion.pressure.dbp)] : []),
    ...measured(perfusion, (mmHg) => showValue("map", mmHg)),
  ],
  infusion: (name, { rate, mlPerH }, emptyInMs) => [
    [`${name}: ${showInfusion(rate, mlPerH)}`, emptyInMs === undefined ? EMPTY_UNKNOWN : showEmpty(emptyInMs)].join(
      ". ",
    ),
  ],
  unconfirmed: showUnconfirmedStatement,
  due: (clock, nowMs) =>
    showClocks([clock], nowMs)
      .map(({ label, text }) => `${label} ${text}`)
      .join(", "),
});
