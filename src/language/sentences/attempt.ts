import type { AirwayEvent } from "../../log/careFacts.ts";
import type { Attempt } from "../../log/attempt.ts";
import type { AttemptRecord, FirstAttempt } from "../../log/attemptRecord.ts";
import { sayLength } from "./clock.ts";
import { sayNumber } from "./number.ts";
import { sentences } from "./sentence.ts";

const whole = (n: number): string => sayNumber(Math.round(n), 0);
const named = ({ number }: Pick<Attempt, "number">): string => `attempt ${whole(number)}`;

const EVENTS: Readonly<Record<AirwayEvent, string>> = {
  bladeIn: "Blade in",
  out: "Out",
  tubeIn: "Tube in",
  tubeConfirmed: "Tube confirmed",
  tubeOut: "Tube out",
};

/**
 * What was called at the airway, said back: "Out. Attempt one, forty seconds."
 *
 * @param attempt the one it begins or ends, with its length where it is over; none where it does neither.
 */
export function sayAirwayEvent(event: AirwayEvent, attempt?: { readonly number: number; readonly lengthMs?: number }) {
  if (attempt === undefined) return sentences(EVENTS[event]);
  const length = attempt.lengthMs === undefined ? "" : `, ${sayLength(attempt.lengthMs)}`;
  return sentences(EVENTS[event], `${named(attempt)}${length}`);
}

/** It was called before, and nothing else since: nothing is recorded. */
export function sayAirwayAlready(event: "bladeIn" | "tubeIn" | "tubeConfirmed" | "tubeOut", number: number): string {
  switch (event) {
    case "bladeIn":
      return sentences(`attempt ${whole(number)} runs already`);
    case "tubeIn":
      return "The tube is in already.";
    case "tubeConfirmed":
      return "The tube is confirmed already.";
    case "tubeOut":
      return "No tube is in.";
  }
}

const OUTCOMES: Readonly<Record<Attempt["outcome"], string>> = {
  running: "running",
  out: "no tube",
  tubeIn: "tube in, not confirmed",
  confirmed: "tube confirmed",
  tubeOut: "tube out again",
};

function sayRecord({ attempt, lengthMs, lowest }: AttemptRecord): string {
  const lows = [
    lowest.spo2Pct === undefined ? undefined : `lowest sats ${whole(lowest.spo2Pct)}`,
    lowest.sbpMmHg === undefined ? undefined : `lowest systolic ${whole(lowest.sbpMmHg)}`,
  ].filter((part) => part !== undefined);
  return [`${named(attempt)}, ${sayLength(lengthMs)}, ${OUTCOMES[attempt.outcome]}`, ...lows].join(", ");
}

const YES_NO = { yes: "yes", no: "no", unknown: "not known" } as const;

/** What "which attempt" answers: each attempt with its length and its lowest values, then how the first one went. */
export function sayAttempts(records: readonly AttemptRecord[], first: FirstAttempt): string {
  if (records.length === 0) return "No attempt yet.";
  const result = `first pass ${YES_NO[first.firstPass]}`;
  const composite = `without low sats or low pressure ${YES_NO[first.withoutLow]}`;
  return sentences(...records.map(sayRecord), result, composite);
}

/** The attempt on the screen: "Attempt 2, running". */
export const showAttempt = ({ number, outcome }: Attempt): string => `Attempt ${number}, ${OUTCOMES[outcome]}`;
