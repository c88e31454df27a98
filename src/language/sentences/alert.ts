import type { Question } from "../../log/facts.ts";
import type { AlertDue, StandingAlert } from "../../rules/alertsDue.ts";
import { sayNumber, showNumber } from "./number.ts";
import { showAgainstTarget } from "./shownStatus.ts";
import { sentences } from "./sentence.ts";
import { sayAgainstTarget, sayMeanName, sayOld } from "./status.ts";
import { showAge } from "./vital.ts";

const SAID: Readonly<Record<Exclude<AlertDue["code"], "map">, string>> = { sbp: "Systolic", cpp: "CPP", spo2: "Sats" };
const SHOWN: Readonly<Record<AlertDue["code"], string>> = { sbp: "SBP", map: "MAP", cpp: "CPP", spo2: "SpO2" };

/** Older than this, an alert says how old its number is. Below it the number was just said. */
const FRESH_MS = 60_000;

/** Number, shortfall and target, and the age where it matters, e.g. "MAP sixty five, twenty five under ninety." */
export function sayAlert(alert: AlertDue): string {
  const name = alert.code === "map" ? sayMeanName(alert.kind) : SAID[alert.code];
  const number = `${name} ${sayNumber(Math.round(alert.value), 0)}`;
  const age = alert.ageMs < FRESH_MS ? undefined : sayOld(alert.ageMs);
  return sentences(`${number}, ${sayAgainstTarget(alert.value, alert.target)}`, age);
}

/**
 * The same on the screen, always with its age: "MAP 65, 25 under target 90, 2 min ago". Where the value is back at target
 * the alert stands until more readings agree, and says so.
 */
export function showStandingAlert(alert: StandingAlert): string {
  const against =
    alert.deficit > 0
      ? showAgainstTarget(alert.value, alert.target)
      : `back at target ${showNumber(alert.target, 0)}, not yet sure`;
  return `${SHOWN[alert.code]} ${showNumber(Math.round(alert.value), 0)}, ${against}, ${showAge(alert.ageMs)}`;
}

/** A question nobody answered: the value stays in the record as unconfirmed and never counts. */
export const sayUnconfirmed = ({ heard, wants, prompt }: Question): string =>
  // "Ketamine" was asked for its dose and states nothing: what stays open is our question.
  wants?.kind === "strength" || wants?.kind === "stock" ? `Not answered: ${prompt}` : `Not confirmed: ${heard}.`;
