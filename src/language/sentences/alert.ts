import { unreachable } from "../../core/unreachable.ts";
import type { Question } from "../../log/facts.ts";
import type { AlertBody } from "../../rules/alerts/condition.ts";
import type { StandingAlert } from "../../rules/alerts/standing.ts";
import { sayBeyond, sayWatched, sayWatchedNumber, showBeyond, showWatched, showWatchedNumber } from "./alertNumber.ts";
import { sayLength, showSpan } from "./clock.ts";
import type { UsualUnits } from "./recordedValue.ts";
import { saySign } from "./rescue.ts";
import { sentences } from "./sentence.ts";
import { sayOld } from "./status.ts";
import { showAge } from "./vital.ts";

/** Older than this, an alert says how old its number is. Below it the number was just said. */
const FRESH_MS = 60_000;

type Limit = Extract<AlertBody, { kind: "limit" }>;
type Falling = Extract<AlertBody, { kind: "falling" }>;

/** Without a measured ICP there is no CPP: only from which ICP on it is under its target. */
function sayBound(icpAtTargetMmHg: number, target: number, usual: UsualUnits): string {
  const under = `CPP under ${sayWatchedNumber("cpp", target, usual)}`;
  return icpAtTargetMmHg <= 0
    ? `${under} at any ICP`
    : `${under} if ICP is over ${sayWatchedNumber("icp", icpAtTargetMmHg, usual)}`;
}

function sayLimit({ code, side, value, target, origin, icpAtTargetMmHg }: Limit, usual: UsualUnits): string {
  if (icpAtTargetMmHg !== undefined) return sayBound(icpAtTargetMmHg, target, usual);
  const number = `${sayWatched(code, origin)} ${sayWatchedNumber(code, value, usual)}`;
  return `${number}, ${sayBeyond(code, value, target, side, usual)}`;
}

const MS_PER_MIN = 60_000;
/** A straight line foretells no seconds. */
const wholeMinutes = (ms: number): number => Math.max(1, Math.round(ms / MS_PER_MIN)) * MS_PER_MIN;

const sayFalling = ({ code, value, target, inMs, origin }: Falling, usual: UsualUnits): string =>
  `${sayWatched(code, origin)} ${sayWatchedNumber(code, value, usual)}, falling, under ${sayWatchedNumber(code, target, usual)} in ${sayLength(wholeMinutes(inMs))}`;

/** Number, how far beyond its target, and the age where it matters, e.g. "MAP sixty five, twenty five under ninety." */
export function sayAlert({ body, ageMs }: StandingAlert, usual: UsualUnits): string {
  const age = ageMs < FRESH_MS ? undefined : sayOld(ageMs);
  switch (body.kind) {
    case "limit":
      return sentences(sayLimit(body, usual), age);
    case "falling":
      return sentences(sayFalling(body, usual), age);
    case "neuroSign":
      return sentences(saySign(body.signs));
    case "device":
      return body.text;
    default:
      return unreachable(body);
  }
}

/** What was said is read back with its number; a perfusion pressure, or a mean that was worked out, is not. */
const isReadBack = ({ code, origin }: Limit): boolean => code !== "cpp" && code !== "cppBound" && origin === "measured";

/** The same beside the read-back of its number: "end tidal, five under thirty five". One that is not read back is given whole. */
export function sayBesideReading(alert: StandingAlert, usual: UsualUnits): string {
  const { body } = alert;
  if (body.kind !== "limit" || !isReadBack(body)) return sayAlert(alert, usual);
  const { code, side, value, target, origin } = body;
  return sentences(`${sayWatched(code, origin)}, ${sayBeyond(code, value, target, side, usual)}`);
}

function showBound(icpAtTargetMmHg: number, target: number, usual: UsualUnits): string {
  const under = `CPP under ${showWatchedNumber("cpp", target, usual)}`;
  return icpAtTargetMmHg <= 0
    ? `${under} at any ICP`
    : `${under} if ICP is over ${showWatchedNumber("icp", icpAtTargetMmHg, usual)}`;
}

function showLimit({ code, side, value, target, beyond, icpAtTargetMmHg }: Limit, usual: UsualUnits): string {
  if (icpAtTargetMmHg !== undefined)
    return `${showBound(icpAtTargetMmHg, target, usual)}${beyond > 0 ? "" : ", not yet sure"}`;
  const against =
    beyond > 0
      ? showBeyond(code, value, target, side, usual)
      : `back at target ${showWatchedNumber(code, target, usual)}, not yet sure`;
  return `${showWatched(code)} ${showWatchedNumber(code, value, usual)}, ${against}`;
}

const showFalling = ({ code, value, target, inMs }: Falling, usual: UsualUnits): string =>
  `${showWatched(code)} ${showWatchedNumber(code, value, usual)}, falling, under ${showWatchedNumber(code, target, usual)} in ${showSpan(wholeMinutes(inMs))}`;

/**
 * The same on the screen, always with its age: "MAP 65, 25 under target 90, 2 min ago". Where the value is back at target
 * the alert stands until more readings agree, and says so.
 */
export function showStandingAlert({ body, ageMs }: StandingAlert, usual: UsualUnits): string {
  switch (body.kind) {
    case "limit":
      return `${showLimit(body, usual)}, ${showAge(ageMs)}`;
    case "falling":
      return `${showFalling(body, usual)}, ${showAge(ageMs)}`;
    case "neuroSign":
      return sentences(saySign(body.signs));
    case "device":
      return body.text;
    default:
      return unreachable(body);
  }
}

/** What an alert is called where its numbers do not count any more: "MAP alert withdrawn." */
export function sayWithdrawn(bodies: readonly AlertBody[]): string | undefined {
  const names = bodies.flatMap((body) =>
    body.kind === "limit" || body.kind === "falling" ? [sayWatched(body.code, "computed")] : [],
  );
  const [first, ...others] = new Set(names);
  if (first === undefined) return undefined;
  return sentences(`${[first, ...others].join(" and ")} alert withdrawn`);
}

/** A question nobody answered: the value stays in the record as unconfirmed and never counts. */
export const sayUnconfirmed = ({ heard, wants, prompt }: Question): string =>
  // "Ketamine" was asked for its dose and states nothing: what stays open is our question.
  wants?.kind === "strength" || wants?.kind === "stock" ? `Not answered: ${prompt}` : `Not confirmed: ${heard}.`;
