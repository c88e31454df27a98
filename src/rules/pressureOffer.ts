import type { InfusionEntry } from "../log/careState.ts";
import type { CaseState } from "../log/caseState.ts";
import { latestOf } from "../log/given.ts";
import { selectPhase } from "../log/phase.ts";
import { selectMap } from "../log/selectors.ts";
import { selectTargets } from "../log/targets.ts";
import { findMedicine } from "../protocol/findMedicine.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { AlertDue } from "./alerts/alertsDue.ts";
import { isOver } from "./clock.ts";
import { pushDoseClock } from "./drugClocks.ts";
import { pushDoses } from "./pushDoses.ts";

/** What the protocol has next against a falling pressure. A reminder of what lies ready, not an order. */
export type PressureOffer =
  | { readonly kind: "pushDose"; readonly drug: string }
  | { readonly kind: "infusion"; readonly drug: string; readonly rate: InfusionEntry["rate"] }
  | { readonly kind: "volume" };

/** A pressure that is too low, or soon will be. */
const isLowPressure = ({ cause, body }: AlertDue): boolean =>
  cause === "pressure" && !(body.kind === "limit" && body.side === "over");

/** The push dose drawn up last, once the interval has passed. */
function readyPushDose(state: CaseState, protocol: Protocol, nowMs: number): PressureOffer | undefined {
  const ready = latestOf(pushDoses(state, protocol, nowMs).map(({ drawnUp }) => drawnUp));
  const name = ready && findMedicine(protocol, ready.drugId)?.spokenName;
  const clock = pushDoseClock(state, protocol);
  if (name === undefined || (clock !== undefined && !isOver(clock, nowMs))) return undefined;
  return { kind: "pushDose", drug: name };
}

/** A pressor that runs under the highest rate of the protocol. */
function roomInInfusion({ care }: CaseState, protocol: Protocol): PressureOffer | undefined {
  const running = Object.values(care.infusions).filter((i) => i.drugClass === "vasopressor" && i.rate.value > 0);
  const newest = latestOf(running);
  const medicine = newest && findMedicine(protocol, newest.drugId);
  if (newest === undefined || medicine === undefined) return undefined;
  const order = medicine.infusions.find(({ unit }) => unit === newest.rate.unit);
  const isFull = order !== undefined && newest.rate.value >= order.high;
  return isFull ? undefined : { kind: "infusion", drug: medicine.spokenName, rate: newest.rate };
}

/** A reading of this turn lies under its target and under the one before it. */
function hasFallen({ before, after }: Course, protocol: Protocol): boolean {
  const [was, is] = [selectMap(before, protocol), selectMap(after, protocol)];
  if (was === undefined || is === undefined || is.mapMmHg >= was.mapMmHg) return false;
  return is.mapMmHg < selectTargets(after, protocol).mapMmHg.target.value;
}

/** The case before and after a turn. */
export type Course = { readonly before: CaseState; readonly after: CaseState };

/**
 * What is offered when a pressure alert was raised or became worse in this turn, or a mean under its target fell further:
 * once for each time, never with a reminder. Not while the patient is first looked at: then nothing has been made ready yet.
 */
export function pressureOffer(
  course: Course,
  protocol: Protocol,
  announced: readonly AlertDue[],
  nowMs: number,
): PressureOffer | undefined {
  const { after: state } = course;
  const isRaised = announced.some((alert) => isLowPressure(alert) && alert.reason !== "again");
  if (!(isRaised || hasFallen(course, protocol)) || selectPhase(state) === "assess") return undefined;
  const ready = readyPushDose(state, protocol, nowMs) ?? roomInInfusion(state, protocol);
  // What has to be thought of rather than given is said once, when the alert is raised.
  return ready ?? (isRaised ? { kind: "volume" } : undefined);
}
