import { unreachable } from "../../core/unreachable.ts";
import type { VitalCode } from "../../core/vitals.ts";
import type { DrugClass, Protocol, Step } from "../../protocol/protocol.ts";
import type { CareState, ClockEntry } from "../careState.ts";
import type { CaseState } from "../caseState.ts";
import { linksOf } from "../chains.ts";
import type { FindingValue } from "../facts.ts";
import { isAfterTube } from "../phase.ts";
import { selectLatest, selectMap } from "../selectors.ts";
import { selectTargets } from "../targets.ts";
import { tubeSinceSeq } from "./tubeSince.ts";

type SatisfiedBy = NonNullable<Step["satisfiedBy"]>;

const FINDINGS: readonly string[] = ["pupilLeft", "pupilRight", "gcsEye", "gcsVerbal", "gcsMotor"];
const isFindingCode = (code: VitalCode): code is VitalCode & FindingValue["code"] => FINDINGS.includes(code);

/** Whether a value or a finding of this was recorded between two facts, by their numbers. */
function isRecordedBetween(state: CaseState, code: VitalCode, sinceSeq: number, untilSeq: number): boolean {
  const isBetween = (seq: number): boolean => seq > sinceSeq && seq < untilSeq;
  for (let link = state.vitals[code]; link !== undefined && link.entry.seq > sinceSeq; link = link.earlier)
    if (isBetween(link.entry.seq)) return true;
  return isFindingCode(code) && [...linksOf(state.findings[code])].some(({ seq }) => isBetween(seq));
}

/** Number of the fact that paralysed the patient first. */
function paralysedSeq({ given }: CareState): number | undefined {
  const relaxants = Object.values(given)
    .flatMap((chain) => [...linksOf(chain)])
    .filter(({ drugClass }) => drugClass === "muscleRelaxant");
  return relaxants.length === 0 ? undefined : Math.min(...relaxants.map(({ seq }) => seq));
}

function isRecorded(state: CaseState, { codes, when }: SatisfiedBy & { readonly kind: "recorded" }): boolean {
  const sinceSeq = when === "sinceTube" ? tubeSinceSeq(state.care) : -1;
  if (sinceSeq === undefined) return false;
  const untilSeq = (when === "beforeParalysis" ? paralysedSeq(state.care) : undefined) ?? Infinity;
  return codes.every((code) => isRecordedBetween(state, code, sinceSeq, untilSeq));
}

/** From when on the clock has run without a stop. */
function startedAtMs(clock: ClockEntry): number {
  let { atMs } = clock;
  for (const { runs, atMs: earlierMs } of linksOf(clock)) {
    if (!runs) break;
    atMs = earlierMs;
  }
  return atMs;
}

/** Oxygen that is taken away for the attempt itself was long enough all the same. */
function isPreoxygenated({ care }: CaseState, { oxygen }: Protocol, nowMs: number): boolean {
  const clock = care.clocks.preoxygenation;
  if (clock === undefined) return false;
  const enoughMs = oxygen.preoxygenateS.value * 1000;
  if (clock.runs) return nowMs - startedAtMs(clock) >= enoughMs;
  const paralysed = paralysedSeq(care);
  const { earlier } = clock;
  if (paralysed === undefined || clock.seq < paralysed || earlier?.runs !== true) return false;
  return clock.atMs - startedAtMs(earlier) >= enoughMs;
}

const isFresh = ({ timers }: Protocol, atMs: number, nowMs: number): boolean =>
  nowMs - atMs <= timers.staleAfterS.value * 1000;

function isMapAtTarget(state: CaseState, protocol: Protocol, nowMs: number): boolean {
  const map = selectMap(state, protocol);
  if (map === undefined || !isFresh(protocol, map.atMs, nowMs)) return false;
  return map.mapMmHg >= selectTargets(state, protocol).mapMmHg.target.value;
}

function isEtco2InBand(state: CaseState, protocol: Protocol, nowMs: number): boolean {
  const etco2 = selectLatest(state, "etco2");
  const sinceSeq = tubeSinceSeq(state.care);
  if (etco2 === undefined || sinceSeq === undefined || etco2.seq < sinceSeq) return false;
  const { low, high } = selectTargets(state, protocol).etco2MmHg;
  return isFresh(protocol, etco2.atMs, nowMs) && etco2.value >= low && etco2.value <= high;
}

/** Also where another strength of the same drug was affirmed since: a syringe stays drawn up beside the bag. */
function isStrengthAffirmed(
  { strengths }: CareState,
  { drugs }: Protocol,
  by: SatisfiedBy & { readonly kind: "strength-affirmed" },
): boolean {
  const atOnce = drugs.filter(({ doses }) => doses.length > 0).map(({ id }) => id);
  const affirmed = Object.values(strengths).flatMap((chain) => [...linksOf(chain)]);
  return affirmed.some(
    ({ drugId, drugClass, strength }) =>
      drugClass === by.drugClass && atOnce.includes(drugId) && strength.volumeMl <= (by.mostMl ?? Infinity),
  );
}

const isRunning = ({ infusions }: CareState, classes: readonly DrugClass[]): boolean =>
  Object.values(infusions).some(({ drugClass, rate }) => classes.includes(drugClass) && rate.value > 0);

/**
 * Whether the record itself answers the step: nobody has to say "done". It holds only as long as the record says so: a
 * fact that is struck, a pressure that falls or a value grown old opens the step again.
 *
 * @param nowMs Unix ms.
 */
export function isSatisfied(state: CaseState, protocol: Protocol, { satisfiedBy }: Step, nowMs: number): boolean {
  if (satisfiedBy === undefined) return false;
  switch (satisfiedBy.kind) {
    case "map-at-target":
      return isMapAtTarget(state, protocol, nowMs);
    case "recorded":
      return isRecorded(state, satisfiedBy);
    case "preoxygenated":
      return isPreoxygenated(state, protocol, nowMs);
    case "strength-affirmed":
      return isStrengthAffirmed(state.care, protocol, satisfiedBy);
    case "infusion-running":
      return isRunning(state.care, satisfiedBy.drugClasses);
    case "fluid-given":
      return Object.keys(state.care.fluids).length > 0;
    case "etco2-in-band":
      return isEtco2InBand(state, protocol, nowMs);
    case "airway":
      return isAfterTube(state);
    default:
      return unreachable(satisfiedBy);
  }
}
